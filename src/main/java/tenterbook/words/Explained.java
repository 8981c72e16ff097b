package tenterbook.words;

import java.sql.SQLException;

/** An exception whose sentence can be written in any language; its {@code getMessage()} is the English one. */
public interface Explained {
    Written explanation();

    /** The sentence of any exception: in every language where it has one, else its message, of a failed query what the database said. */
    static Written of(Throwable e) {
        if (e instanceof Explained explained) {
            return explained.explanation();
        }
        Throwable said = e;
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            said = cause instanceof SQLException ? cause : said;
        }
        return Joined.with("", String.valueOf(said.getMessage()));
    }
}
