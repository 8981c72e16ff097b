package tenterbook.scenario;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program in a process of its own, as a person starts it. */
final class ServedChild implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("Open http://127\\.0\\.0\\.1:(\\d+) ");

    private final Process process;
    private final BufferedReader output;
    private final List<String> said = new ArrayList<>();

    private ServedChild(Process process) {
        this.process = process;
        this.output = process.inputReader(StandardCharsets.UTF_8);
    }

    /** @param settings of the computer it starts on, as in {@code -Duser.timezone=Asia/Tokyo} */
    static ServedChild start(Path archive, int port, String... settings) throws IOException {
        return start(List.of(settings), "serve", "--archive", archive.toString(), "--port", Integer.toString(port));
    }

    /** On a folder that is filled with the sample studio where it is unused. */
    static ServedChild startSample(Path archive) throws IOException {
        return start(List.of(), "serve", "--archive", archive.toString(), "--port", "0", "--sample");
    }

    /** As a double click does, without a window of a browser. */
    static ServedChild open(Path archive) throws IOException {
        return start(List.of(), "open", "--archive", archive.toString(), "--port", "0", "--no-browser");
    }

    private static ServedChild start(List<String> settings, String... words) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m"));
        command.addAll(settings);
        command.addAll(List.of(
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Dstdout.encoding=UTF-8",
                "-Dstderr.encoding=UTF-8",
                "-Dfile.encoding=UTF-8",
                "-cp",
                System.getProperty("java.class.path"),
                "tenterbook.app.Main"));
        command.addAll(List.of(words));
        return new ServedChild(
                new ProcessBuilder(command).redirectErrorStream(true).start());
    }

    /** Waits until it serves, and gives a client to it. */
    Client client() throws IOException {
        for (String line = output.readLine(); line != null; line = output.readLine()) {
            said.add(line);
            Matcher address = ADDRESS.matcher(line);
            if (address.find()) {
                return new Client(Integer.parseInt(address.group(1)));
            }
        }
        throw new IOException("It ended without serving and said: " + said);
    }

    /** What it has said; after its end, everything. */
    String said() {
        return String.join("\n", said);
    }

    /** Waits for its end and gives its exit code. */
    int ended() throws IOException, InterruptedException {
        output.lines().forEach(said::add);
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            throw new IOException("It did not end: " + said);
        }
        return process.exitValue();
    }

    /** Ends it as Ctrl-C or a shutdown of the computer does. */
    void end() {
        // By its handle, since Process itself would close the streams that are still to be read.
        process.toHandle().destroy();
    }

    /** Ends it without a word, as a crash does. It can do nothing more after this call. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
