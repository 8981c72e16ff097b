package tenterbook.labelling;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The rules forbid the label of one or more pieces. Nothing was printed. */
public final class LabelBlocked extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;
    private final transient List<Piece> pieces;

    /** A piece and all reasons against its label. */
    public record Piece(PieceNumber number, List<LabelRefusal> refusals) {
        public Piece {
            refusals = List.copyOf(refusals);
        }
    }

    /** Without a stack trace, for speed: the index asks for very many. */
    public LabelBlocked(List<Piece> pieces) {
        super(null, null, false, false);
        this.pieces = List.copyOf(pieces);
    }

    @Override
    public String getMessage() {
        return explanation().inEnglish();
    }

    /** A line each. */
    @Override
    public Written explanation() {
        return conventions -> Stream.concat(
                        Stream.of(Message.of("label.blocked")),
                        pieces.stream()
                                .map(piece -> Message.of(
                                        "label.blocked-piece",
                                        "piece",
                                        piece.number,
                                        "refusals",
                                        piece.refusals.stream()
                                                .map(refusal -> refusal.in(conventions))
                                                .collect(Collectors.joining(" ")))))
                .map(line -> line.in(conventions))
                .collect(Collectors.joining("\n"));
    }

    /** All blocked pieces, each with its reasons, in the order asked for. */
    public List<Piece> pieces() {
        return pieces;
    }
}
