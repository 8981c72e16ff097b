package tenterbook.app.start;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Asks the program to end: from the system, as Ctrl-C and a shutdown do, or from the program itself. The system waits until {@link
 * #close}, so what must be closed in order is opened after this and closed before.
 */
public final class StopSignal implements AutoCloseable {
    private static final long LONGEST_SECONDS = 5;

    private final CountDownLatch asked = new CountDownLatch(1);
    private final CountDownLatch over = new CountDownLatch(1);

    public StopSignal() {
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            stop();
            try {
                over.await(LONGEST_SECONDS, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }));
    }

    /** Asks from within the program. */
    public void stop() {
        asked.countDown();
    }

    /** Waits until it is asked to end. */
    public void await() throws InterruptedException {
        asked.await();
    }

    @Override
    public void close() {
        over.countDown();
    }
}
