package tenterbook.web.record;

import java.util.Locale;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.piece.Piece;

/** The number of a piece as a person types it into a field: ‘v24-020’ is V24-020 where no piece has the small letters. */
public final class TypedNumber {
    private TypedNumber() {}

    public static Optional<Piece> piece(Archive archive, String typed) {
        String number = typed.strip();
        return archive.piece(number).or(() -> archive.piece(number.toUpperCase(Locale.ROOT)));
    }
}
