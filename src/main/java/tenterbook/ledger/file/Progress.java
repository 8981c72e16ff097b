package tenterbook.ledger.file;

import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Reports the progress of long work and asks whether to stop. Called often; must be quick and thread-safe. */
public interface Progress {
    /** Reports nothing and never cancels. */
    Progress UNWATCHED = new Progress() {
        @Override
        public void at(long done, long total, String what) {}

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /**
     * @param total 0 where not known
     * @param what is being done now, in words for the maker
     */
    void at(long done, long total, String what);

    /** As {@link #at(long, long, String)}, in any language; in English where that is not overridden. */
    default void at(long done, long total, Written what) {
        at(done, total, what.inEnglish());
    }

    /** Whether the person asked to stop; the work then ends and leaves nothing half done. */
    boolean cancelled();

    /** @throws Cancelled if the person asked to stop */
    default void orStop() {
        if (cancelled()) {
            throw new Cancelled();
        }
    }

    /** The person asked to stop. */
    final class Cancelled extends RuntimeException implements Explained {
        private static final long serialVersionUID = 1L;

        private static final Message STOPPED = Message.of("ledger.stopped");

        Cancelled() {
            super(STOPPED.inEnglish());
        }

        @Override
        public Written explanation() {
            return STOPPED;
        }
    }
}
