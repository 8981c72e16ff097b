package tenterbook.web.recognition;

import java.util.Set;
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
