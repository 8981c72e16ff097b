package tenterbook.bench;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * How long it takes from starting the program to the last byte of its first page, beside {@link tenterbook.bench.bare.BarePage}; and from the
 * application folder, where that was made. Each in a process of its own, in turn, so that other work of the machine meets all alike.
 *
 * <p>Needs {@code target/tenterbook.jar} and {@code target/lib}, and an archive that was served before, so that its index is there.
 */
public final class StartBench {
    private static final Path TARGET = Path.of("target");
    private static final int ROUNDS = Integer.getInteger("rounds", 15);

    private StartBench() {}

    /** @param args the folder of an archive */
    public static void main(String[] args) throws Exception {
        String archive = Path.of(args[0]).toAbsolutePath().toString();
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Map<String, List<String>> ways = new LinkedHashMap<>();
        ways.put(
                "bare page",
                List.of(
                        java,
                        "-cp",
                        System.getProperty("classes", "target/classes") + File.pathSeparator + TARGET.resolve("lib")
                                + File.separator + "*",
                        "tenterbook.bench.bare.BarePage",
                        archive));
        ways.put(
                "jar",
                List.of(
                        java,
                        "-jar",
                        TARGET.resolve("tenterbook.jar").toString(),
                        "serve",
                        "--archive",
                        archive,
                        "--port"));
        Path installed = Path.of(System.getProperty("bundle", "target/bundle/tenterbook/bin/tenterbook"));
        if (Files.exists(installed)) {
            ways.put("bundle", List.of(installed.toString(), "open", "--no-browser", "--archive", archive, "--port"));
        }
        Map<String, List<Double>> seconds = new LinkedHashMap<>();
        for (int round = 0; round <= ROUNDS; round++) {
            for (Map.Entry<String, List<String>> way : ways.entrySet()) {
                double took = firstPage(way.getValue());
                if (round > 0) { // the first one reads the files from the disk
                    seconds.computeIfAbsent(way.getKey(), name -> new ArrayList<>())
                            .add(took);
                }
            }
        }
        double bare = median(seconds.get("bare page"));
        seconds.forEach((name, all) -> System.out.printf(
                Locale.ROOT,
                "%-10s first page after %.2f s (median of %d; %.2f to %.2f), %.2f times the bare page%n",
                name,
                median(all),
                all.size(),
                all.stream().mapToDouble(each -> each).min().orElseThrow(),
                all.stream().mapToDouble(each -> each).max().orElseThrow(),
                median(all) / bare));
    }

    private static double median(List<Double> all) {
        return all.stream().sorted().skip(all.size() / 2).findFirst().orElseThrow();
    }

    /** Seconds until the whole answer has arrived. */
    private static double firstPage(List<String> command) throws IOException, InterruptedException {
        int port = freePort();
        List<String> all = new ArrayList<>(command);
        all.add(Integer.toString(port));
        long start = System.nanoTime();
        Process program = new ProcessBuilder(all)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            while (!answered(port)) {
                if (!program.isAlive()) {
                    throw new IOException("It ended: " + all);
                }
                Thread.sleep(3);
            }
            return (System.nanoTime() - start) / 1e9;
        } finally {
            program.destroy();
            if (!program.waitFor(30, TimeUnit.SECONDS)) {
                program.destroyForcibly().waitFor();
            }
        }
    }

    /** False while nothing listens yet. */
    private static boolean answered(int port) throws IOException {
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), port)) {
            OutputStream out = socket.getOutputStream();
            out.write(("GET / HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nConnection: close\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            InputStream in = socket.getInputStream();
            String answer = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            if (answer.isEmpty()) {
                return false; // by the look whether the port is free
            }
            if (!answer.startsWith("HTTP/1.1 200")) {
                throw new IOException(
                        "Answered with " + answer.lines().findFirst().orElse("nothing"));
            }
            return true;
        } catch (SocketException e) {
            return false;
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            return free.getLocalPort();
        }
    }
}
