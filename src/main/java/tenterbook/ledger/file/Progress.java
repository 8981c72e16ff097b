package tenterbook.ledger.file;

import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** How long work tells where it is and learns that it should stop. Called often; must be quick and safe for any thread. */
public interface Progress {
    /** For work nobody watches. */
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
     * @param what being done now, in the studio's words
     */
    void at(long done, long total, String what);

    /** As {@link #at(long, long, String)}, in any language; in English where that is not overridden. */
    default void at(long done, long total, Written what) {
        at(done, total, what.inEnglish());
    }

    /** Whether the person asked to stop; the work then ends tidily and leaves nothing half done. */
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
