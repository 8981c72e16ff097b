package tenterbook.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import tenterbook.imaging.ClothTable;
import tenterbook.imaging.IntakePool;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.ledger.file.Progress;

/** The ways of going through a list of photographs that are measured beside each other. */
enum IngestWay {
    BARE_ONE("bare decoding with ImageIO, 1 thread"),
    BARE_TWO("bare decoding with ImageIO, 2 threads"),
    INTAKE("intake");

    /** Where the intake puts what it takes; to be deleted by whoever measures. */
    static final Path TAKEN_IN = Path.of("target", "bench-taken-in");

    private final String words;

    IngestWay(String words) {
        this.words = words;
    }

    /** A cold run: one way in a process of its own; the time to start Java counts as busy but not by the clock. */
    public static void main(String[] args) throws Exception {
        if (args[0].equals("ENORMOUS")) {
            System.out.println(intake(List.of(Path.of(args[1]))));
        } else {
            System.out.println(valueOf(args[0]).run(BenchPhotos.in(Path.of(args[1]), Integer.parseInt(args[2]))));
        }
    }

    String words() {
        return words;
    }

    Took run(List<Path> photos) throws Exception {
        return switch (this) {
            case BARE_ONE -> bare(photos, 1);
            case BARE_TWO -> bare(photos, 2);
            case INTAKE -> intake(photos);
        };
    }

    private static Took bare(List<Path> photos, int threads) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            return Took.of(() -> {
                List<Future<Integer>> widths = photos.stream()
                        .map(photo ->
                                pool.submit(() -> ImageIO.read(photo.toFile()).getWidth()))
                        .toList();
                for (Future<Integer> width : widths) {
                    width.get();
                }
                return null;
            });
        } finally {
            pool.shutdownNow();
        }
    }

    private static Took intake(List<Path> photos) throws Exception {
        // Left there until the end: a disk looks slowly for room where files have just been deleted.
        Path folder = Files.createTempDirectory(Files.createDirectories(TAKEN_IN), "in");
        Originals originals = new Originals(folder.resolve("photos"));
        PhotoIntake intake = new PhotoIntake(
                originals,
                new Previews(folder.resolve("previews"), originals),
                new ClothTable(folder.resolve("photos"), null));
        IntakePool pool = new IntakePool(intake);
        List<IntakePool.Incoming> incoming =
                photos.stream().map(IntakePool.Incoming::file).toList();
        return Took.of(() -> {
            for (IntakePool.Outcome outcome : pool.take(incoming, Progress.UNWATCHED)) {
                if (!(outcome instanceof IntakePool.Outcome.Taken taken)
                        || !taken.photo().viewable()
                        || taken.photo().palette().isEmpty()) {
                    throw new IllegalStateException("A photograph was not taken in whole: " + outcome);
                }
            }
            return null;
        });
    }

    static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
