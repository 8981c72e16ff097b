package tenterbook.web.recognition;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Pixels;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.search.recognition.Recogniser;
import tenterbook.search.recognition.Recognition;
import tenterbook.words.Explained;

/** One picture that is compared with the photographs of the archive, and the answer. Safe for many threads. */
public final class RunningRecognition implements Progress {
    /** How far it is. */
    public enum State {
        RUNNING,
        DONE,
        STOPPED,
        FAILED
    }

    /** So long it waits for photographs that were not looked at yet; what is left then is said beside the answer. */
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(1);

    private static final Duration POLL = Duration.ofMillis(200);

    private final String token;
    private final Pixels picture;
    private final @Nullable Digest photo;
    private volatile State state = State.RUNNING;
    private volatile long done;
    private volatile long total;
    private volatile boolean stopAsked;
    private volatile @Nullable Recognition answer;
    private volatile String why = "";

    /**
     * @param picture as it is shown beside the answer
     * @param photo which photograph of the archive it is; null if it is none
     */
    RunningRecognition(String token, Pixels picture, @Nullable Digest photo) {
        this.token = token;
        this.picture = picture;
        this.photo = photo;
    }

    void run(Recogniser recogniser, Pixels whole) {
        try {
            awaitFeatures(recogniser);
            orStop();
            answer = recogniser.recognise(whole, photo == null ? Set.of() : Set.of(photo), this);
            state = State.DONE;
        } catch (Cancelled e) {
            state = State.STOPPED;
        } catch (RuntimeException | Error e) {
            // An Error too ends it, or its page would wait without end.
            why = String.valueOf(Explained.of(e));
            state = State.FAILED;
        }
    }

    /** Soon after a start photographs are still to be looked at, without which the right piece may not be found. */
    private void awaitFeatures(Recogniser recogniser) {
        int all = recogniser.waiting();
        long until = System.nanoTime() + LONGEST_WAIT.toNanos();
        for (int left = all; left > 0 && System.nanoTime() < until; left = recogniser.waiting()) {
            orStop();
            at(Math.max(0, all - left), all, "");
            LockSupport.parkNanos(POLL.toNanos());
        }
        done = 0;
        total = 0;
    }

    @Override
    public void at(long nowDone, long ofAll, String what) {
        done = Math.max(done, nowDone);
        total = ofAll;
    }

    @Override
    public boolean cancelled() {
        return stopAsked;
    }

    void stop() {
        stopAsked = true;
    }

    public String token() {
        return token;
    }

    public State state() {
        return state;
    }

    public boolean over() {
        return state != State.RUNNING;
    }

    public long done() {
        return done;
    }

    public long total() {
        return total;
    }

    public String why() {
        return why;
    }

    Pixels picture() {
        return picture;
    }

    @Nullable
    Digest photo() {
        return photo;
    }

    /** Null until it is done. */
    public @Nullable Recognition answer() {
        return answer;
    }
}
