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

/** Labels that cannot be printed: why, where the record is mended, and which size would hold the words. */
public final class BlockedLabels {
    /** A larger size is sought for so many; it asks for laying out each label anew. */
    static final int SOUGHT = 10;

    private static final double[] HIGHER_MM = {5, 10, 15};

    private BlockedLabels() {}

    /** A form in which the record is mended. */
    public record Link(String label, String address) {}

    /** A reason in a sentence. */
    public record Reason(String text, List<Link> links) {}

    /** A piece whose label is held back, with the reasons and what to do. */
    public record Label(String number, List<Reason> reasons) {}

    static Label refused(LabelBlocked.Piece piece, PieceFacts facts) {
        return new Label(
                piece.number().value(),
                piece.refusals().stream()
                        .map(refusal -> new Reason(Words.w(refusal), links(refusal, facts)))
                        .toList());
    }

    private static List<Link> links(LabelRefusal refusal, PieceFacts facts) {
        String number = facts.piece().number().value();
        return switch (refusal.mend()) {
            case STUDIO -> List.of(new Link(w("page.menu.studio"), "/studio"));
            case PIECE -> List.of(new Link(w("piece-form.change", "piece", number), "/pieces/" + number + "/edit"));
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

    /** The cloth of a piece stands in its clamping; without one, the piece's form is where a clamping is named. */
    private static List<Link> missingCloth(PieceFacts facts) {
        String number = facts.piece().number().value();
        List<Link> links = new ArrayList<>();
        facts.clampings()
                .forEach(clamping -> links.add(new Link(
                        w("titles.change-record", "kind", Kinds.CLAMPING.called(), "id", clamping.id()),
                        "/clampings/" + clamping.id().value() + "/edit")));
        if (links.isEmpty()) {
            links.add(new Link(w("piece-form.change", "piece", number), "/pieces/" + number + "/edit"));
        }
        links.add(new Link(w("print.add-cloth"), "/cloths/new"));
        return links;
    }

    /** @param seek whether a larger size is looked for */
    static Label unprintable(Site site, Piece piece, String reason, PrintSettings request, boolean seek)
            throws IOException {
        String number = piece.number().value();
        List<Reason> reasons = new ArrayList<>();
        reasons.add(new Reason(
                seek ? (reason + " " + higher(site, piece, request)).strip() : reason,
                List.of(new Link(w("piece-form.change", "piece", number), "/pieces/" + number + "/edit"))));
        return new Label(number, reasons);
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
