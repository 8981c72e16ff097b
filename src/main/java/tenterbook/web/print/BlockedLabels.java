package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.measure.NumberWords;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.page.Words;

/** Labels that cannot be printed: why, where to correct the record, and which size would hold the words. */
public final class BlockedLabels {
    /** A larger size is sought for so many labels, since each must be laid out again. */
    static final int SOUGHT = 10;

    private static final double[] HIGHER_MM = {5, 10, 15};

    private BlockedLabels() {}

    /** A form in which the record can be corrected. */
    public record Link(String label, String address) {}

    public record Reason(String text, List<Link> links) {}

    /** A piece whose label cannot be printed, with the reasons and what to do. */
    public record Label(String number, List<Reason> reasons) {}

    static Label refused(LabelBlocked.Piece piece, PieceFacts facts) {
        return new Label(
                facts.piece().shown().value(),
                piece.refusals().stream()
                        .map(refusal -> new Reason(Words.w(refusal), links(refusal, facts)))
                        .toList());
    }

    private static List<Link> links(LabelRefusal refusal, PieceFacts facts) {
        String number = facts.piece().shown().value();
        return switch (refusal.mend()) {
            case STUDIO -> List.of(new Link(w("page.menu.studio"), "/studio"));
            case PIECE -> List.of(change(number));
            case CLOTH ->
                facts.cloth().cloths().isEmpty()
                        ? missingCloth(facts)
                        : facts.cloth().cloths().stream()
                                .map(cloth -> new Link(
                                        w("print.change-cloth", "id", cloth.id()),
                                        "/cloths/" + cloth.id().value() + "/edit"))
                                .toList();
        };
    }

    /** The cloth of a piece is named by its clamping, and a clamping by the piece's form. */
    private static List<Link> missingCloth(PieceFacts facts) {
        String number = facts.piece().shown().value();
        List<Link> links = new ArrayList<>();
        facts.clampings()
                .forEach(clamping -> links.add(new Link(
                        w("titles.change-record", "kind", Kinds.CLAMPING.called(), "id", clamping.id()),
                        "/clampings/" + clamping.id().value() + "/edit")));
        if (links.isEmpty()) {
            links.add(change(number));
        }
        links.add(new Link(w("print.add-cloth"), "/cloths/new"));
        return links;
    }

    static Label unprintable(Piece piece, String reason) {
        return new Label(
                piece.shown().value(),
                List.of(new Reason(reason, List.of(change(piece.shown().value())))));
    }

    /** With the size that would hold the words, where one of those tried does. */
    static Label withLargerSize(Site site, Piece piece, String reason, PrintSettings request) throws IOException {
        return unprintable(piece, (reason + " " + higher(site, piece, request)).strip());
    }

    private static Link change(String number) {
        return new Link(w("piece-form.change", "piece", number), "/pieces/" + number + "/edit");
    }

    /** As in 'It fits 150 by 110 mm.'; empty where none of the sizes tried holds it. */
    private static String higher(Site site, Piece piece, PrintSettings request) throws IOException {
        for (double more : HIGHER_MM) {
            try {
                PrintSettings larger = request.sized(
                        request.format().widthMm(), request.format().heightMm() + more);
                LabelText text = LabelText.of(PieceReader.of(site.archive(), piece), larger);
                if (LabelPaper.unprintable(List.of(text), larger).isEmpty()) {
                    return w(
                            "print.it-fits",
                            "width",
                            NumberWords.decimals(larger.format().widthMm(), 0),
                            "height",
                            NumberWords.decimals(larger.format().heightMm(), 0));
                }
            } catch (IllegalArgumentException tooLarge) {
                return "";
            }
        }
        return "";
    }
}
