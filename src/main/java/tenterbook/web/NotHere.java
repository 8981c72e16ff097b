package tenterbook.web;

/** The archive has no such record or page. */
public final class NotHere extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NotHere(String what) {
        super("There is no %s in this archive. It may have been mistyped; search finds it if it is there."
                .formatted(what));
    }
}
