package tenterbook.words;

/** An exception whose sentence can be written in any language; its {@code getMessage()} is the English one. */
public interface Explained {
    Written explanation();

    /** The sentence of any exception: in every language where it has one, else its message. */
    static Written of(Throwable e) {
        return e instanceof Explained explained
                ? explained.explanation()
                : Joined.with("", String.valueOf(e.getMessage()));
    }
}
