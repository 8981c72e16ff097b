package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.PERCENT;

import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.measure.Quantity;
import tenterbook.piece.label.PieceComponent;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.words.Message;

/** Parts of a piece besides its cloth, and answers to the questions of the rules of labels. */
public final class LabelFactRecords {
    public static final Part<PieceComponent> COMPONENT = Part.<PieceComponent>of("piece-component")
            .text("name", PieceComponent::name)
            .required()
            .choice("kind", StoredCodes.COMPONENT_KIND, PieceComponent::kind)
            .list("fibres", MaterialRecords.FIBRE, PieceComponent::fibres)
            .field("weightShare", quantity(PERCENT), PieceComponent::weightShare)
            .blamed()
            .field("areaShare", quantity(PERCENT), PieceComponent::areaShare)
            .doubted(component ->
                    Stream.of(component.weightShare(), component.areaShare()).anyMatch(LabelFactRecords::moreThanAll)
                            ? Optional.of(Message.of("input.more-than-all"))
                            : Optional.empty())
            .built(v -> new PieceComponent(
                    v.get("name"), v.get("kind"), v.get("fibres"), v.get("weightShare"), v.get("areaShare")));

    /** Never typed into a form of its record: given on the page that asks. */
    public static final Part<RuleAnswer> ANSWER = Part.<RuleAnswer>of("rule-answer")
            .text("rule", RuleAnswer::rule)
            .required()
            .blamed()
            .text("asked", RuleAnswer::asked)
            .required()
            .field("holds", Flag.JUDGED, RuleAnswer::holds)
            .required()
            .text("words", RuleAnswer::words)
            .personal()
            .text("by", RuleAnswer::by)
            .personal()
            .field("at", Plain.INSTANT, RuleAnswer::at)
            .required()
            .field("facts", Plain.DIGEST, RuleAnswer::facts)
            .required()
            .built(v -> new RuleAnswer(
                    v.get("rule"),
                    v.get("asked"),
                    v.get("holds", false),
                    v.get("words"),
                    v.get("by"),
                    v.get("at"),
                    v.get("facts")));

    private LabelFactRecords() {}

    private static boolean moreThanAll(Quantity share) {
        return share.low() != null && share.low() > 100 || share.high() != null && share.high() > 100;
    }
}
