package tenterbook.label;

import java.util.List;
import java.util.stream.Collectors;
import tenterbook.label.rule.Refusal;
import tenterbook.piece.PieceNumber;

/** One or more pieces whose label the rules forbid as their records stand. Nothing was printed. */
public final class LabelBlocked extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient List<Piece> pieces;

    /** A piece and everything that stands in the way of its label. */
    public record Piece(PieceNumber number, List<Refusal> refusals) {
        public Piece {
            refusals = List.copyOf(refusals);
        }
    }

    /** Carries no trace: it is an answer, and the index asks for very many. */
    public LabelBlocked(List<Piece> pieces) {
        super(null, null, false, false);
        this.pieces = List.copyOf(pieces);
    }

    @Override
    public String getMessage() {
        return pieces.stream()
                .map(p -> "Piece %s: %s"
                        .formatted(
                                p.number,
                                p.refusals.stream().map(Refusal::toString).collect(Collectors.joining(" "))))
                .collect(Collectors.joining("\n", "Nothing was printed.\n", ""));
    }

    /** All blocked pieces, each with its reasons, in the order asked for. */
    public List<Piece> pieces() {
        return pieces;
    }
}
