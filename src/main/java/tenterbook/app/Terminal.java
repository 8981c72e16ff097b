package tenterbook.app;

import java.io.PrintWriter;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** Progress on a terminal: one line that rewrites itself, or nothing where output goes to a file. Ctrl-C stops the work. */
final class Terminal implements Progress, AutoCloseable {
    private static final long EVERY_NANOS = 150_000_000;
    private final PrintWriter out;
    private final boolean shown = System.console() != null;
    private final Thread onInterrupt;
    private volatile boolean stop;
    private volatile boolean over;
    private long last;
    private int width;

    Terminal(PrintWriter out) {
        this.out = out;
        this.onInterrupt = new Thread(this::stopAndWait, "stop-on-interrupt");
        Runtime.getRuntime().addShutdownHook(onInterrupt);
    }

    /** Lets the work end in order before the process does; it checks often whether it should. */
    private void stopAndWait() {
        stop = true;
        for (int i = 0; i < 100 && !over; i++) {
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    @Override
    public void at(long done, long total, String what) {
        long now = System.nanoTime();
        if (shown && (now - last > EVERY_NANOS || done == total)) {
            last = now;
            String line = (total > 0
                            ? Message.of("command.progress-of", "what", what, "done", done, "total", total)
                            : Message.of("command.progress", "what", what, "done", done))
                    .inEnglish();
            out.print("\r" + line + " ".repeat(Math.max(0, width - line.length())));
            out.flush();
            width = line.length();
        }
    }

    @Override
    public boolean cancelled() {
        return stop;
    }

    /** A line that stays, in place of the progress. */
    void say(Object line) {
        clear();
        out.println(line);
    }

    private void clear() {
        if (shown && width > 0) {
            out.print("\r" + " ".repeat(width) + "\r");
            out.flush();
            width = 0;
        }
    }

    @Override
    public void close() {
        over = true;
        clear();
        try {
            Runtime.getRuntime().removeShutdownHook(onInterrupt);
        } catch (IllegalStateException e) {
            // The process is ending already, so there is no hook to remove.
        }
    }
}
