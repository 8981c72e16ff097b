package tenterbook.ledger.file;

import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteException;
import tenterbook.words.Message;

/** Distinguishes a failing disk from an error of the program. */
final class DiskTrouble {
    private DiskTrouble() {}

    /**
     * The exception to throw instead of {@code e}: with a sentence where the disk or another program is the cause, else {@code
     * e}.
     *
     * @param undone what did not happen, as in 'Nothing was saved'
     * @param place what could not be written, as in 'the disk that holds the archive'
     */
    static RuntimeException explained(JdbiException e, Message undone, Message place) {
        return Stream.<Throwable>iterate(e, Objects::nonNull, Throwable::getCause)
                .filter(SQLiteException.class::isInstance)
                .flatMap(cause -> sentence((SQLiteException) cause, place).stream())
                .findFirst()
                .<RuntimeException>map(
                        why -> new ArchiveProblem(Message.of("ledger.disk.trouble", "undone", undone, "why", why), e))
                .orElse(e);
    }

    private static Optional<Message> sentence(SQLiteException e, Message place) {
        // The lower byte is the primary result code; the upper ones extend it.
        return switch (e.getResultCode().code & 0xff) {
            case 13 -> Optional.of(Message.of("ledger.disk.full", "place", place));
            case 5, 6 -> Optional.of(Message.of("ledger.disk.busy"));
            case 8, 10, 14 ->
                Optional.of(Message.of("ledger.disk.not-written", "place", place, "why", e.getResultCode().message));
            default -> Optional.empty();
        };
    }
}
