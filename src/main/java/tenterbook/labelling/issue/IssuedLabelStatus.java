package tenterbook.labelling.issue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Compares an issued label with what would be printed today from the same settings.
 *
 * @param state result of the comparison
 * @param changes the lines that would now read differently, in the order of the label
 * @param refused why none could be issued today; empty where one could
 */
public record IssuedLabelStatus(State state, List<Change> changes, List<LabelRefusal> refused) {
    static final Message CODE = Message.of("label.of-code");
    static final Message COLOURS = Message.of("label.of-colours");

    public enum State {
        /** Word for word what would be printed today. */
        CURRENT,
        OUT_OF_DATE,
        /** A rule forbids it with the present records. */
        REFUSED,
        /** Stored in a form that cannot be compared, or not a label. */
        NOT_COMPARED
    }

    /**
     * A line that would read differently.
     *
     * @param part which part of the label
     * @param was empty where it was not on the label
     * @param now empty where it would be left out
     * @param byRule whether the rules changed, so that the record may be unchanged
     */
    public record Change(Written part, String was, String now, boolean byRule) {}

    public IssuedLabelStatus {
        changes = List.copyOf(changes);
        refused = List.copyOf(refused);
    }

    /** Compares one piece of a paper with the facts of today. */
    public static IssuedLabelStatus of(IssuedPaper paper, IssuedPaper.Issued issued, PieceFacts facts) {
        Optional<PrintSettings> request = PrintSettings.of(paper);
        if (request.isEmpty()) {
            return new IssuedLabelStatus(State.NOT_COMPARED, List.of(), List.of());
        }
        LabelText now;
        try {
            now = LabelText.of(facts, request.get());
        } catch (LabelBlocked e) {
            return new IssuedLabelStatus(
                    State.REFUSED,
                    List.of(),
                    e.pieces().stream()
                            .flatMap(piece -> piece.refusals().stream())
                            .toList());
        }
        List<Change> changes = changes(paper, issued, now);
        return new IssuedLabelStatus(changes.isEmpty() ? State.CURRENT : State.OUT_OF_DATE, changes, List.of());
    }

    private static List<Change> changes(IssuedPaper paper, IssuedPaper.Issued issued, LabelText now) {
        boolean newRules = !paper.rules().equals(now.rules());
        List<Change> changes = new ArrayList<>();
        for (Part part : Part.values()) {
            List<IssuedPaper.Line> before = issued.lines().stream()
                    .filter(line -> line.part().equals(part.code()))
                    .toList();
            List<LabelText.Line> after =
                    now.lines().stream().filter(line -> line.part() == part).toList();
            for (int i = 0; i < Math.max(before.size(), after.size()); i++) {
                String was = i < before.size() ? before.get(i).text() : "";
                String is = i < after.size() ? after.get(i).text() : "";
                boolean ruled = i < before.size() && !before.get(i).basis().isEmpty()
                        || i < after.size() && !after.get(i).basis().isEmpty();
                if (!was.equals(is)) {
                    changes.add(new Change(part, was, is, newRules && ruled));
                }
            }
        }
        if (!issued.code().equals(now.code())) {
            changes.add(new Change(CODE, issued.code(), now.code(), false));
        }
        // Only names are compared, since a colour measured again differs slightly.
        if (!names(issued.colours()).equals(names(LabelIssuer.colours(now)))) {
            changes.add(new Change(COLOURS, band(issued.colours()), band(LabelIssuer.colours(now)), false));
        }
        return changes;
    }

    private static List<String> names(List<IssuedPaper.Colour> colours) {
        return colours.stream().map(IssuedPaper.Colour::name).toList();
    }

    private static String band(List<IssuedPaper.Colour> colours) {
        List<String> words = new ArrayList<>();
        for (IssuedPaper.Colour colour : colours) {
            words.add(String.format(
                    Locale.ROOT,
                    "%s L* %.1f, a* %.1f, b* %.1f%s",
                    colour.name(),
                    colour.colour().lightness(),
                    colour.colour().a(),
                    colour.colour().b(),
                    colour.share() == null ? "" : String.format(Locale.ROOT, ", %.0f %%", colour.share() * 100)));
        }
        return String.join("; ", words).strip();
    }
}
