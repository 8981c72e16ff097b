package tenterbook.imaging;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.measure.Digest;

/** Photographs looked at one after another behind the running program, on a thread of its own. Thread-safe. */
public final class LookingBehind implements AutoCloseable {
    /** So many, at most, are looked at before whoever follows hears of them. */
    private static final int TOGETHER = 8;

    private static final Logger LOG = LoggerFactory.getLogger(LookingBehind.class);

    private final String what;
    private final Consumer<Photo> look;

    /** Photographs to be looked at, in order. */
    private final Map<Digest, Photo> queue = new LinkedHashMap<>();

    private @Nullable Thread thread;
    private boolean open;
    private boolean busy;
    /** Photographs taken since none was left. */
    private int asked;

    /**
     * How far it has come.
     *
     * @param done photographs looked at
     * @param all those and the ones still to be looked at; 0 where none are
     */
    public record Looking(int done, int all) {}

    /**
     * @param what is looked for, for the log
     * @param look is called for each photograph; where it fails, that is logged and the next one is looked at
     */
    public LookingBehind(String what, Consumer<Photo> look) {
        this.what = what;
        this.look = look;
    }

    /**
     * Begins.
     *
     * @param heard gets on the same thread the photographs that were looked at
     * @param before photographs that it gets also
     */
    public synchronized void start(Consumer<Set<Digest>> heard, Set<Digest> before) {
        open = true;
        thread = new Thread(() -> run(heard, new HashSet<>(before)), what);
        thread.setDaemon(true);
        thread.start();
    }

    /** Whether photographs are taken: it has begun and is not closed. */
    public synchronized boolean started() {
        return open;
    }

    /** One that is in the queue already keeps its place. */
    public synchronized void add(Collection<Photo> photos) {
        if (open) {
            asked = left() == 0 ? 0 : asked;
            for (Photo photo : photos) {
                asked += queue.put(photo.digest(), photo) == null ? 1 : 0;
            }
            notifyAll();
        }
    }

    public synchronized boolean waits(Digest photo) {
        return queue.containsKey(photo);
    }

    /** Whether photographs are still to be looked at. */
    public synchronized boolean looking() {
        return busy || !queue.isEmpty();
    }

    /** How many are still to be looked at. */
    public synchronized int left() {
        return queue.size() + (busy ? 1 : 0);
    }

    public synchronized Looking progress() {
        int left = left();
        return left == 0 ? new Looking(0, 0) : new Looking(Math.max(0, asked - left), Math.max(asked, left));
    }

    private void run(Consumer<Set<Digest>> heard, Set<Digest> found) {
        try {
            for (Photo next = next(found, heard); next != null; next = next(found, heard)) {
                try {
                    look.accept(next);
                } catch (RuntimeException | Error e) {
                    LOG.warn(
                            "{}: photograph {} cannot be looked at",
                            what,
                            next.digest().brief(),
                            e);
                }
                found.add(next.digest());
            }
        } catch (RuntimeException e) {
            LOG.error("{}: no more photographs are looked at until the next start", what, e);
        } finally {
            synchronized (this) {
                busy = false;
                queue.clear();
            }
        }
    }

    /** Waits for a photograph; null when it is closed. Tells the follower what was looked at before it waits. */
    private @Nullable Photo next(Set<Digest> found, Consumer<Set<Digest>> heard) {
        if (!found.isEmpty() && (found.size() >= TOGETHER || nothingQueued())) {
            heard.accept(Set.copyOf(found));
            found.clear();
        }
        synchronized (this) {
            busy = false;
            while (queue.isEmpty() && open) {
                try {
                    wait();
                } catch (InterruptedException e) {
                    return null;
                }
            }
            if (!open) {
                return null;
            }
            Photo next = queue.remove(queue.keySet().iterator().next());
            busy = true;
            return next;
        }
    }

    private synchronized boolean nothingQueued() {
        return queue.isEmpty();
    }

    /** Returns when the photograph in work is done; the others are left. */
    @Override
    public void close() {
        Thread worker;
        synchronized (this) {
            worker = thread;
            open = false;
            queue.clear();
            notifyAll();
        }
        if (worker != null) {
            try {
                worker.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
