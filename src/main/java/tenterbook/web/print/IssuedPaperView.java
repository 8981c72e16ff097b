package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentKind;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.issue.IssuedLabelStatus;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.page.Words;

/**
 * One piece on an issued paper, compared with its record today.
 *
 * @param today null where the piece is withdrawn
 * @param newer whether a newer paper of its kind and market was issued for the piece
 */
public record IssuedPaperView(
        IssuedPaper paper,
        IssuedPaper.Issued issued,
        @Nullable IssuedLabelStatus today,
        boolean newer) {
    /** As in 'hang tag, US'. */
    public String called() {
        return word(paper)
                + (paper.market().isEmpty() ? "" : ", " + paper.market().toUpperCase(java.util.Locale.ROOT));
    }

    /** What kind of label or document it is, in words; the code where this program knows no such kind. */
    public static String word(IssuedPaper paper) {
        return CodedChoice.find(LabelKind.values(), paper.kind())
                .map(Words::w)
                .or(() -> CodedChoice.find(DocumentKind.values(), paper.kind()).map(Words::w))
                .orElse(paper.kind());
    }

    /** The result of the comparison, in words. */
    public String state() {
        if (newer) {
            return w("paper.replaced-by-a-newer");
        }
        return today == null
                ? w("paper.piece-withdrawn")
                : switch (today.state()) {
                    case CURRENT -> w("paper.current");
                    case OUT_OF_DATE -> w("paper.out-of-date");
                    case REFUSED -> w("paper.could-not-be-issued");
                    case NOT_COMPARED -> w("paper.kept");
                };
    }

    /** Whether it should be looked at. */
    public boolean inDoubt() {
        return !newer
                && today != null
                && (today.state() == IssuedLabelStatus.State.OUT_OF_DATE
                        || today.state() == IssuedLabelStatus.State.REFUSED);
    }

    /** Every readable paper with a piece, newest first. */
    static List<IssuedPaper> papers(Site site, String number) {
        return Papers.of(site.ledger(), number).readable();
    }

    /** Every readable paper with a piece, newest first, each compared with the record today. */
    public static List<IssuedPaperView> of(Site site, Piece piece) {
        List<IssuedPaper> papers = papers(site, piece.number().value());
        if (papers.isEmpty()) {
            return List.of();
        }
        var facts = PieceReader.of(site.archive(), piece);
        return papers.stream()
                .flatMap(paper -> paper.pieces().stream()
                        .filter(issued -> issued.piece().equals(piece.number()))
                        .limit(1)
                        .map(issued -> new IssuedPaperView(
                                paper, issued, IssuedLabelStatus.of(paper, issued, facts), superseded(paper, papers))))
                .toList();
    }

    /** @param papers newest first */
    static boolean superseded(IssuedPaper paper, List<IssuedPaper> papers) {
        return papers.stream()
                .takeWhile(other -> !other.id().equals(paper.id()))
                .anyMatch(other ->
                        other.kind().equals(paper.kind()) && other.market().equals(paper.market()));
    }
}
