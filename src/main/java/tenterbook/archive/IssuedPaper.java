package tenterbook.archive;

import java.time.Instant;
import java.util.List;
import tenterbook.piece.PieceNumber;

/**
 * Labels as they were printed, so that what a buyer was told can be shown later.
 *
 * @param id as in {@code paper-20240305-101500-1}
 * @param kind of label, as in {@code hang-tag}
 * @param market whose rules were followed, as in {@code us}
 * @param sheet the paper it was set on
 * @param template name and version of the layout
 * @param rules name and version of each rule table
 * @param pieces the pieces, each with the version of its record and the exact lines
 */
public record IssuedPaper(
        String id,
        String kind,
        String market,
        String sheet,
        String template,
        List<String> rules,
        Instant issuedAt,
        List<Issued> pieces) {
    /** One piece's label: the version of the record it was printed from, and its text line by line. */
    public record Issued(PieceNumber piece, int version, List<String> lines) {
        public Issued {
            lines = List.copyOf(lines);
        }
    }

    public IssuedPaper {
        rules = rules == null ? List.of() : List.copyOf(rules);
        pieces = pieces == null ? List.of() : List.copyOf(pieces);
    }
}
