package tenterbook.ledger;

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

    /** Whether the person asked to stop; the work then ends tidily and leaves nothing half done. */
    boolean cancelled();

    /** @throws Cancelled if the person asked to stop */
    default void orStop() {
        if (cancelled()) {
            throw new Cancelled();
        }
    }

    /** The person asked to stop. */
    final class Cancelled extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Cancelled() {
            super("Stopped as asked; nothing is left half done.");
        }
    }
}
