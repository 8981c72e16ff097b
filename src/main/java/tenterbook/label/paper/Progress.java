package tenterbook.label.paper;

/** Follows a job of printing, and may stop it. */
public interface Progress {
    /** Neither shows nor stops anything. */
    Progress NONE = (done, total) -> true;

    /**
     * Called after each label.
     *
     * @return false to stop; nothing is then written
     */
    boolean goOn(int done, int total);
}
