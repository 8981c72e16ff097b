package tenterbook.exchange.bag;

import tenterbook.ledger.file.Progress;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/** Counts the bytes of a long read or copy, updates a {@link Progress}, and stops when asked. */
public final class Pace {
    private final Progress progress;
    private final long total;
    private long done;
    private Written what = Joined.NOTHING;

    /** @param total bytes expected, 0 where not known */
    public Pace(Progress progress, long total) {
        this.progress = progress;
        this.total = total;
    }

    /** @throws Progress.Cancelled if asked to stop */
    public void begin(Written doing) {
        what = doing;
        passed(0);
    }

    void passed(long bytes) {
        done += bytes;
        progress.at(done, total, what);
        progress.orStop();
    }
}
