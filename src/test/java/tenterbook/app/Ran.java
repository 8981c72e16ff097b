package tenterbook.app;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;

/** What one command did. */
record Ran(int code, String out, String err) {
    /** Runs a command in this process, as a script would. */
    static Ran run(Object... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.commandLine()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(Stream.of(words).map(Object::toString).toArray(String[]::new));
        return new Ran(code, out.toString(), err.toString());
    }

    List<String> lines() {
        return out.lines().toList();
    }
}
