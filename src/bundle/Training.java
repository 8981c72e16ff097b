import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Starts the program on a sample archive and asks for the pages that one opens first, so that the classes loaded for them are known.
 * Run as {@code java Training.java JAVA JAR SAMPLE WORK CLASSLIST}.
 */
public final class Training {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+");
    private static final List<String> PAGES = List.of(
            "/",
            "/style/tenterbook.css",
            "/pieces/V24-003",
            "/?q=linen+six+dips",
            "/pieces/new",
            "/today",
            "/boards",
            "/studio");

    private Training() {}

    public static void main(String[] args) throws Exception {
        String java = args[0];
        String jar = args[1];
        Path archive = Path.of(args[3], "studio");
        run(new ProcessBuilder(java, "-jar", jar, "restore", "--from", args[2], "--archive", archive.toString()));
        Process program = new ProcessBuilder(
                        java,
                        "-XX:DumpLoadedClassList=" + args[4],
                        "-XX:+UseSerialGC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        jar,
                        "tenterbook.app.Main",
                        "open",
                        "--archive",
                        archive.toString(),
                        "--port",
                        "0",
                        "--no-browser")
                .redirectErrorStream(true)
                .start();
        try {
            visit(address(program.inputReader()));
        } finally {
            program.destroy();
        }
        if (!program.waitFor(60, TimeUnit.SECONDS)) {
            throw new IOException("The program did not end");
        }
    }

    private static void run(ProcessBuilder command) throws IOException, InterruptedException {
        int code = command.inheritIO().start().waitFor();
        if (code != 0) {
            throw new IOException(command.command() + " ended with " + code);
        }
    }

    private static String address(BufferedReader output) throws IOException {
        for (String line = output.readLine(); line != null; line = output.readLine()) {
            Matcher found = ADDRESS.matcher(line);
            if (found.find()) {
                return found.group();
            }
        }
        throw new IOException("The program ended without an address");
    }

    private static void visit(String address) throws IOException, InterruptedException {
        for (String page : PAGES) {
            int status = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(URI.create(address + page)).build(),
                            HttpResponse.BodyHandlers.discarding())
                    .statusCode();
            if (status != 200) {
                throw new IOException(page + " was answered with " + status);
            }
        }
    }
}
