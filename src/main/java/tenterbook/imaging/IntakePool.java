package tenterbook.imaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/**
 * Takes many photographs in, several at a time. One that cannot be taken does not hold up the others; each gets its own
 * {@link Outcome}, in the order they were given in.
 */
public final class IntakePool {
    /** More would only wait for each other: decoding fills a processor, and each photograph in work takes memory. */
    public static final int MOST_WORKERS = 3;

    private final PhotoIntake intake;
    private final int workers;

    /** One worker more than processors, which has work while another waits for the disk; at most {@link #MOST_WORKERS}. */
    public IntakePool(PhotoIntake intake) {
        this(intake, Math.min(MOST_WORKERS, 1 + Runtime.getRuntime().availableProcessors()));
    }

    /** @throws IllegalStateException if {@code workers} is less than 1 */
    public IntakePool(PhotoIntake intake, int workers) {
        if (workers < 1) {
            throw new IllegalStateException("Photographs need at least one worker; found: " + workers);
        }
        this.intake = Objects.requireNonNull(intake, "intake");
        this.workers = workers;
    }

    /** Opened by a worker when its turn comes, and closed by it. */
    @FunctionalInterface
    public interface Bytes {
        InputStream open() throws IOException;
    }

    /** @param name as the person knows it; see {@link PhotoIntake#take} */
    public record Incoming(String name, Bytes bytes) {
        public static Incoming file(Path file) {
            return new Incoming(file.getFileName().toString(), () -> Files.newInputStream(file));
        }
    }

    /** What became of one photograph. */
    public sealed interface Outcome {
        String name();

        /** Kept; its original is synced into place. */
        record Taken(String name, Photo photo) implements Outcome {}

        /** Not kept; {@code sentence} says why and what to do, for the person who added it. */
        record Refused(String name, String sentence) implements Outcome {}

        /** Its turn had not come when the person asked to stop; nothing of it is kept. */
        record Stopped(String name) implements Outcome {}
    }

    /**
     * Returns when every photograph has its outcome. After a request to stop, those in work are still finished and the rest
     * become {@link Outcome.Stopped}; whether to name those that were taken is the caller's choice.
     *
     * @param progress updated after each photograph; its {@code done} counts photographs and never falls
     * @return one outcome for each incoming photograph, in the same order
     * @throws IllegalStateException if the waiting thread is interrupted, or on a fault of the program; what was taken by then
     *     stays
     */
    public List<Outcome> take(List<Incoming> incoming, Progress progress) {
        Counted counted = new Counted(progress, incoming.size());
        AtomicInteger number = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, Math.min(workers, incoming.size())), work -> {
            Thread thread = new Thread(work, "intake-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Outcome>> waiting = new ArrayList<>();
            for (Incoming one : incoming) {
                waiting.add(pool.submit(() -> takeOne(one, counted)));
            }
            List<Outcome> outcomes = new ArrayList<>();
            for (Future<Outcome> outcome : waiting) {
                outcomes.add(outcome.get());
            }
            return outcomes;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("Taking photographs in was interrupted; those taken so far are kept", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("Taking photographs in failed; those taken so far are kept", e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private Outcome takeOne(Incoming one, Counted counted) {
        if (counted.progress.cancelled()) {
            return new Outcome.Stopped(one.name());
        }
        Outcome outcome;
        try (InputStream in = one.bytes().open()) {
            outcome = new Outcome.Taken(one.name(), intake.take(in, one.name()));
        } catch (PhotoRefused refused) {
            outcome = new Outcome.Refused(one.name(), refused.getMessage());
        } catch (IOException e) {
            outcome = new Outcome.Refused(
                    one.name(),
                    Message.of("photo.not-kept", "why", String.valueOf(e.getMessage()))
                            .inEnglish());
        }
        counted.done(one.name());
        return outcome;
    }

    /** Counts and tells under one lock, so that the count a person sees never falls. */
    private static final class Counted {
        private final Progress progress;
        private final int total;
        private int done;

        Counted(Progress progress, int total) {
            this.progress = progress;
            this.total = total;
        }

        synchronized void done(String name) {
            done++;
            progress.at(done, total, name);
        }
    }
}
