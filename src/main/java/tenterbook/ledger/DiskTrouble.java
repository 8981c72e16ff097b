package tenterbook.ledger;

import java.util.Objects;
import java.util.stream.Stream;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteException;

/** Tells a disk that fails from a mistake of the program. */
final class DiskTrouble {
    private DiskTrouble() {}

    /**
     * What to throw in the place of {@code e}: a sentence where the disk or another program is at fault, else itself.
     *
     * @param undone what did not come to pass, as in 'Nothing was saved'
     * @param place what could not be written, as in 'the disk that holds the archive'
     */
    static RuntimeException told(JdbiException e, String undone, String place) {
        return Stream.<Throwable>iterate(e, Objects::nonNull, Throwable::getCause)
                .filter(SQLiteException.class::isInstance)
                .map(cause -> sentence((SQLiteException) cause, place))
                .filter(sentence -> !sentence.isEmpty())
                .findFirst()
                .<RuntimeException>map(sentence -> new ArchiveProblem(undone + ": " + sentence, e))
                .orElse(e);
    }

    private static String sentence(SQLiteException e, String place) {
        // The lower byte is the plain code; what stands above it tells the finer kind.
        return switch (e.getResultCode().code & 0xff) {
            case 13 -> place + " has no room left. Make room on it and try again.";
            case 5, 6 -> "another program holds the ledger. Close that one and try again.";
            case 8, 10, 14 ->
                "%s cannot be written (%s). Look after it and try again.".formatted(place, e.getResultCode().message);
            default -> "";
        };
    }
}
