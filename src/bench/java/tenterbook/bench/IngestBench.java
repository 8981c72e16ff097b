package tenterbook.bench;

import java.io.File;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Measures how fast photographs are taken in, beside a bare decoding of the same files and beside general-purpose tools:
 *
 * <pre>MAVEN_OPTS=-Xmx1500m mvn -q -Pbench compile exec:java -Dmain.class=tenterbook.bench.IngestBench</pre>
 *
 * <p>The photographs (50, or as many as the first argument says) are made once, under {@code target/bench-photos}. In each
 * round every way takes all of them, ten at a time in turn, so that what else the machine does falls on all alike. The cold
 * round gives each way a new Java process and drops the files from the system's cache, where {@code dd} can do that. Each
 * round ends with the tools, where they are there; see {@code src/bench/ingest-pipeline.sh}. {@code -Drounds=N} sets the rounds.
 */
public final class IngestBench {
    private static final int ROUNDS = Integer.getInteger("rounds", 5);
    private static final int TURN = 10;
    private static final Path ENORMOUS = Path.of("target", "bench-enormous", "e.jpg");

    private final List<Path> photos;
    private final Path folder;

    private IngestBench(Path folder, List<Path> photos) {
        this.folder = folder;
        this.photos = photos;
    }

    public static void main(String[] args) throws Exception {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 50;
        Path folder = Path.of("target", "bench-photos-" + count);
        System.out.printf(
                Locale.ROOT,
                "%d photographs; %d processors, heap at most %,d MB, Java %s, load average %.1f%n",
                count,
                Runtime.getRuntime().availableProcessors(),
                Runtime.getRuntime().maxMemory() >> 20,
                Runtime.version(),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        Files.createDirectories(ENORMOUS.getParent());
        child(List.of("-Xmx1200m"), BenchPhotos.class, folder.toString(), "" + count, ENORMOUS.toString());
        try {
            new IngestBench(folder, BenchPhotos.in(folder, count)).run();
        } finally {
            IngestWay.delete(IngestWay.TAKEN_IN);
        }
    }

    private void run() throws Exception {
        long bytes = 0;
        for (Path photo : photos) {
            bytes += Files.size(photo);
        }
        System.out.printf(Locale.ROOT, "%,d bytes in all%n", bytes);
        List<Took> cold = new ArrayList<>();
        for (IngestWay way : IngestWay.values()) {
            dropFromCache();
            cold.add(Took.read(
                    child(List.of("-Xmx1g"), IngestWay.class, way.name(), folder.toString(), "" + photos.size())));
        }
        report("cold", cold);
        List<List<Took>> warm = new ArrayList<>();
        List<Took> tools = new ArrayList<>();
        for (int round = 0; round <= ROUNDS; round++) {
            List<Took> took = inTurn();
            // The first round compiles the program.
            if (round > 0) {
                report("warm " + round, took);
                warm.add(took);
                tools("kind", took.get(IngestWay.INTAKE.ordinal())).ifPresent(tools::add);
            }
        }
        List<Took> middle = new ArrayList<>();
        for (int way = 0; way < IngestWay.values().length; way++) {
            int index = way;
            middle.add(Took.median(warm.stream().map(round -> round.get(index)).toList()));
        }
        report("warm, median of " + ROUNDS, middle);
        Took intake = middle.get(IngestWay.INTAKE.ordinal());
        if (!tools.isEmpty()) {
            told("kind", Took.median(tools), intake);
            tools("each", intake);
        }
        enormous();
    }

    /** Every way takes the same few photographs before any takes the next few, so that a slow minute slows all. */
    private List<Took> inTurn() throws Exception {
        IngestWay[] ways = IngestWay.values();
        Took[] sums = new Took[ways.length];
        for (int from = 0; from < photos.size(); from += TURN) {
            List<Path> few = photos.subList(from, Math.min(photos.size(), from + TURN));
            for (int i = 0; i < ways.length; i++) {
                Took took = ways[i].run(few);
                sums[i] = sums[i] == null ? took : sums[i].plus(took);
            }
        }
        return List.of(sums);
    }

    private static void report(String round, List<Took> took) {
        System.out.printf(
                Locale.ROOT,
                "%n%s; load average %.1f%n",
                round,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        Took bare = took.get(IngestWay.BARE_TWO.ordinal());
        for (IngestWay way : IngestWay.values()) {
            Took one = took.get(way.ordinal());
            System.out.printf(Locale.ROOT, "  %-44s %s; %s of bare decoding on 2%n", way.words(), one, one.over(bare));
        }
    }

    /** Two jobs of general-purpose tools, arranged as {@code src/bench/ingest-pipeline.sh} tells; empty where they are absent. */
    private Optional<Took> tools(String way, Took intake) throws Exception {
        Path out = Files.createTempDirectory(Files.createDirectories(IngestWay.TAKEN_IN), "tools");
        try {
            Process process = new ProcessBuilder(
                            "bash", "src/bench/ingest-pipeline.sh", folder.toString(), out.toString(), way)
                    .redirectErrorStream(true)
                    .start();
            String said = new String(process.getInputStream().readAllBytes()).strip();
            if (process.waitFor() == 0) {
                Took took = Took.read(said);
                told(way, took, intake);
                return Optional.of(took);
            }
            System.out.println("  tools left out: " + said);
        } catch (IOException e) {
            System.out.println("  tools left out: " + e.getMessage());
        }
        return Optional.empty();
    }

    private static void told(String way, Took took, Took intake) {
        System.out.printf(Locale.ROOT, "  %-44s %s; %s of intake%n", "tools, 2 jobs, " + way, took, took.over(intake));
    }

    private static void enormous() throws Exception {
        String said = child(List.of("-Xmx256m"), IngestWay.class, "ENORMOUS", ENORMOUS.toString());
        System.out.printf("%none JPEG of 201 megapixels with a heap of 256 MB: %s%n", said.strip());
    }

    /** Asks the system to forget the files' contents; where it cannot, the cold round is warmer than it says. */
    private void dropFromCache() throws InterruptedException {
        for (Path photo : photos) {
            try {
                new ProcessBuilder("dd", "if=" + photo, "iflag=nocache", "count=0", "status=none")
                        .redirectErrorStream(true)
                        .start()
                        .waitFor();
            } catch (IOException e) {
                return;
            }
        }
    }

    private static String child(List<String> options, Class<?> main, String... args) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-Djava.awt.headless=true", "-cp", classPath(), main.getName()));
        command.addAll(Arrays.asList(args));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        if (process.waitFor() != 0) {
            throw new IOException(main.getSimpleName() + " failed: " + said);
        }
        return said;
    }

    /** Maven runs this in its own process, whose class path is Maven's; the loader knows the project's. */
    private static String classPath() {
        if (IngestBench.class.getClassLoader() instanceof java.net.URLClassLoader loader) {
            return Stream.of(loader.getURLs())
                    .map(url -> Path.of(java.net.URI.create(url.toString())).toString())
                    .sorted(Comparator.comparing(path -> !path.endsWith("classes")))
                    .reduce((a, b) -> a + File.pathSeparator + b)
                    .orElseThrow();
        }
        return System.getProperty("java.class.path");
    }
}
