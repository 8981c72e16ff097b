package tenterbook.imaging;

import java.io.IOException;
import java.util.concurrent.Semaphore;

/**
 * Turns at decoding: so few photographs are in work at once that they fit into memory, however many are sent together. They
 * are served in the order they came. One turn is not taken within another.
 */
final class DecodePermits {
    /** More than a photograph of any kind takes, with its previews. */
    private static final long EACH_BYTES = 200L << 20;

    private static final Semaphore FREE =
            new Semaphore(atOnce(Runtime.getRuntime().maxMemory()), true);

    private DecodePermits() {}

    /** Work on one photograph. */
    @FunctionalInterface
    interface Work<R> {
        R run() throws IOException;
    }

    /** @param bytes the most memory that the program may take */
    static int atOnce(long bytes) {
        return (int) Math.max(1, Math.min(IntakePool.MOST_WORKERS, bytes / EACH_BYTES));
    }

    static <R> R take(Work<R> work) throws IOException {
        FREE.acquireUninterruptibly();
        try {
            return work.run();
        } finally {
            FREE.release();
        }
    }
}
