package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Papers;
import tenterbook.facts.Cloths;
import tenterbook.facts.Colours;
import tenterbook.facts.Denial;
import tenterbook.facts.HourShare;
import tenterbook.facts.MaterialShare;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.Whereabouts;
import tenterbook.imaging.Photo;
import tenterbook.labelling.Answers;
import tenterbook.ledger.Saved;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Event;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Particulars;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.cost.Costing;
import tenterbook.piece.cost.PieceCost;
import tenterbook.piece.cost.Pricing;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.Custody;
import tenterbook.piece.label.LabelFacts;
import tenterbook.piece.label.PieceComponent;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.recipe.dip.DipTally;
import tenterbook.web.Site;
import tenterbook.web.clamping.ClampingView;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.condition.LastExamined;
import tenterbook.web.page.Words;
import tenterbook.web.print.IssuedPaperView;
import tenterbook.web.record.FactLine;
import tenterbook.words.Joined;
import tenterbook.words.Message;

/**
 * A piece as its page shows it.
 *
 * @param clothDoubt why its photograph gives no colours; null where it gives some or a person named them
 * @param closeView whether its colours are those of a close view instead
 * @param agreements that name it, earliest first
 * @param notDyed shown in place of the dyeings where there is none
 * @param dyeings the clampings it went through, in order
 * @param papers that were printed for it, newest first
 * @param answers to questions of label rules
 * @param unreadable names of papers that are kept and cannot be read
 * @param gps whether a photograph holds coordinates, which leave the archive only where the maker asks for it
 */
public record PieceView(
        Piece piece,
        int version,
        ColourBand band,
        Colours.@Nullable Doubt clothDoubt,
        boolean closeView,
        List<ShownPhoto> photos,
        List<Dyeing> dyeings,
        List<FactLine> facts,
        List<FactLine> costs,
        List<Examination> examined,
        List<AgreedLine> agreements,
        String notDyed,
        boolean gps,
        Saved<Piece> saved,
        List<IssuedPaperView> papers,
        List<Given> answers,
        List<String> unreadable) {
    /** In order of time. */
    public List<Event> events() {
        return Custody.inTime(piece.events());
    }

    /** Its place among the events as they are recorded, from 0. */
    public int at(Event event) {
        return piece.events().indexOf(event);
    }

    /** Whether there is a receipt for it. */
    public boolean sale(Event event) {
        return event.kind() == Act.SELL.event();
    }

    public Optional<ShownPhoto> first() {
        return photos.stream().findFirst();
    }

    /** A photograph with what is known of its file. */
    public record ShownPhoto(PiecePhoto of, Photo photo) {
        public String alt(String title) {
            return of.caption().isEmpty() ? w("plates.alt", "photograph", of.shown(), "piece", title) : of.caption();
        }
    }

    /** An answer, and whether the facts are still those that it rests on; yes where the studio's record cannot be read. */
    public record Given(RuleAnswer answer, boolean holds) {}

    /**
     * A loan or consignment that names it.
     *
     * @param party as named to people
     * @param value agreed for this piece; empty where none is
     */
    public record AgreedLine(Agreement agreement, String party, String value) {}

    /** The clamping that brought the piece into a state. */
    public record Dyeing(int state, String layers, String note, ClampingView clamping) {}

    static PieceView of(Site site, Saved<Piece> saved, PieceFacts facts) {
        Piece piece = facts.piece();
        List<ShownPhoto> photos = photos(facts);
        return new PieceView(
                piece,
                saved.version(),
                ColourBand.of(facts.colours()),
                facts.colours().from() == Colours.From.NAMED
                        ? null
                        : facts.colours().doubt(),
                facts.colours().from() == Colours.From.CLOTH && facts.colours().closeView(),
                photos,
                dyeings(site, facts),
                facts(facts, site.today()),
                costs(site, piece),
                facts.condition().unnoted(piece),
                agreements(site, facts),
                Denial.NOT_TOLD_YET.unless(facts, () -> w("piece-form.no-record-of-clamping")),
                photos.stream().anyMatch(shown -> shown.photo().gps()),
                saved,
                IssuedPaperView.of(site, piece),
                piece.label().answers().stream()
                        .map(answer ->
                                new Given(answer, facts.readableOrigin().isEmpty() || Answers.holds(answer, facts)))
                        .toList(),
                Papers.of(site.ledger(), piece.number().value()).unreadable());
    }

    private static List<AgreedLine> agreements(Site site, PieceFacts facts) {
        return facts.agreements().get().stream()
                .map(agreement -> new AgreedLine(
                        agreement,
                        agreement.party() == null
                                ? FactLine.notRecorded()
                                : site.archive()
                                        .party(agreement.party().value())
                                        .map(Party::title)
                                        .orElse(agreement.party().value()),
                        agreement
                                .piece(facts.piece().number())
                                .map(AgreedPiece::value)
                                .map(Words::w)
                                .orElse("")))
                .toList();
    }

    private static List<ShownPhoto> photos(PieceFacts facts) {
        List<ShownPhoto> photos = new ArrayList<>();
        for (PiecePhoto photo : facts.piece().photos()) {
            Photo file = facts.photos().get(photo.photo());
            if (file != null) {
                photos.add(new ShownPhoto(photo, file));
            }
        }
        return photos;
    }

    private static List<Dyeing> dyeings(Site site, PieceFacts facts) {
        List<Dyeing> dyeings = new ArrayList<>();
        for (int i = 0; i < facts.piece().made().size(); i++) {
            MadeIn made = facts.piece().made().get(i);
            int state = i + 1;
            facts.clampings().stream()
                    .filter(clamping -> clamping.id().equals(made.clamping()))
                    .findFirst()
                    .ifPresent(clamping -> dyeings.add(new Dyeing(
                            state, w(made.layers()), made.note(), ClampingView.of(site.archive(), clamping, 0))));
        }
        return dyeings;
    }

    /** What it cost and the prices that follow; empty where neither hours nor materials are recorded. */
    private static List<FactLine> costs(Site site, Piece piece) {
        MaterialShare share = MaterialShare.of(site.archive(), piece);
        HourShare worked = HourShare.of(site.archive(), piece);
        PieceCost cost = new PieceCost(worked.hours(), share.amount());
        List<FactLine> lines = new ArrayList<>();
        if (!cost.hours().recorded()
                && cost.materials() == null
                && share.missing() == null
                && worked.missing() == null) {
            return lines;
        }
        Pricing pricing = site.archive()
                .readableStudio()
                .map(studio -> studio.selling().pricing())
                .orElse(Pricing.NONE);
        Costing costing = Costing.of(cost, pricing);
        lines.add(new FactLine(
                w("cost.materials"),
                cost.materials() == null ? FactLine.notRecorded() : w(cost.materials()),
                about(share.how(), share.missing())));
        FactLine hours = FactLine.of(w("cost.hours"), cost.hours());
        String how = about(worked.how(), worked.missing());
        lines.add(how.isEmpty() ? hours : new FactLine(hours.label(), hours.text(), how));
        line(lines, "cost.work", costing.work());
        line(lines, "cost.cost", costing.cost());
        line(lines, "cost.price", costing.price());
        line(lines, "cost.retail", costing.retail());
        if (costing.missing() != null) {
            FactLine last = lines.remove(lines.size() - 1);
            String why = w(costing.missing());
            lines.add(new FactLine(last.label(), last.text(), last.also().isEmpty() ? why : last.also() + " · " + why));
        }
        return lines;
    }

    private static String about(@Nullable Message how, @Nullable Message missing) {
        Message sentence = how == null ? missing : how;
        return sentence == null ? "" : w(sentence);
    }

    private static void line(List<FactLine> lines, String label, Costing.@Nullable Span span) {
        if (span != null) {
            lines.add(new FactLine(
                    w(label), span.single() ? w(span.low()) : w("cost.span", "low", span.low(), "high", span.high())));
        }
    }

    private static List<FactLine> facts(PieceFacts of, LocalDate today) {
        Piece piece = of.piece();
        List<FactLine> facts = new ArrayList<>();
        recorded(
                facts,
                "piece.earlier-numbers",
                piece.numbers().stream()
                        .filter(number -> !number.equals(piece.shown()))
                        .map(PieceNumber::value)
                        .collect(Collectors.joining(", ")));
        facts.add(new FactLine(w("piece-form.kind"), FactLine.or(piece.category())));
        facts.add(FactLine.of(w("piece-form.length"), piece.length()));
        facts.add(FactLine.of(w("piece-form.width"), piece.width()));
        facts.add(FactLine.of(w("piece-form.weight"), piece.mass()));
        facts.add(new FactLine(w("piece-form.finished"), w(piece.finished())));
        facts.add(edition(piece));
        Whereabouts now = of.whereabouts();
        facts.add(new FactLine(
                w("piece-form.status"),
                FactLine.or(now.status()),
                now.disagreement().or(now::statusFrom).map(Words::w).orElse("")));
        facts.add(new FactLine(
                w("piece-form.held-by"),
                FactLine.or(of.holder().map(Party::title).orElse("")),
                now.holderDisagreement().map(Words::w).orElse("")));
        facts.add(new FactLine(w("piece-form.place"), FactLine.or(piece.place())));
        facts.add(
                new FactLine(w("piece-form.price"), piece.price() == null ? FactLine.notRecorded() : w(piece.price())));
        facts.add(new FactLine(w("piece-form.on-it-besides-cloth"), FactLine.or(piece.trims())));
        parts(facts, piece.label());
        Cloths cloth = of.cloth();
        facts.add(new FactLine(
                w("piece-form.cloth"),
                FactLine.or(cloth.inWords()),
                cloth.disagreement().map(Words::w).orElseGet(cloth::evidence)));
        DipTally dips = of.dips();
        facts.add(new FactLine(
                w("piece-form.dips"), FactLine.or(dips.text()), Words.w(new Joined(" ", dips.disagreements()))));
        facts.add(LastExamined.fact(of.condition(), today));
        if (of.readableOrigin().isPresent()) {
            facts.add(new FactLine(
                    w("piece-form.made-by"),
                    FactLine.or(of.readableOrigin().get().inFull())));
        }
        Particulars more = piece.particulars();
        recorded(facts, "piece-form.helpers", more.helpers());
        recorded(facts, "piece-form.inscriptions", more.inscriptions());
        recorded(facts, "piece-form.features", more.features());
        recorded(facts, "piece-form.credit-line", more.creditLine());
        recorded(facts, "piece-form.image-rights", more.imageRights());
        recorded(facts, "piece-form.hanging", more.hanging());
        recorded(facts, "piece-form.packing", more.packing());
        recorded(facts, "piece-form.packed-size", more.packedSize());
        recorded(facts, "piece-form.commodity-code", more.commodityCode());
        recorded(facts, "piece-form.treatments", more.treatments());
        recorded(facts, "piece-form.residues", more.residues());
        return facts;
    }

    /** As typed, with how it was read. */
    private static FactLine edition(Piece piece) {
        return new FactLine(
                w("piece-form.edition"),
                FactLine.or(w(piece.editionAsTyped())),
                piece.edition().isEmpty()
                        ? ""
                        : piece.placeInEdition()
                                .map(place -> w(place.inWords()))
                                .orElseGet(() -> w("edition.kept-as-typed")));
    }

    private static void parts(List<FactLine> facts, LabelFacts label) {
        for (PieceComponent part : label.components()) {
            List<String> also = new ArrayList<>();
            if (part.weightShare().recorded()) {
                also.add(w("piece-form.part-weight", "share", QuantityWords.entered(part.weightShare())));
            }
            if (part.areaShare().recorded()) {
                also.add(w("piece-form.part-surface", "share", QuantityWords.entered(part.areaShare())));
            }
            String fibres = Words.w(new Joined(", ", part.fibres()));
            facts.add(new FactLine(
                    part.kind() == null
                            ? part.name()
                            : part.name() + " (" + w(part.kind().word()) + ")",
                    FactLine.or(fibres),
                    String.join("; ", also)));
        }
        recorded(facts, "piece-form.country-of-sale", label.soldIn());
        if (label.madeToOrder() != null) {
            facts.add(
                    new FactLine(w("piece-form.made-to-order"), label.madeToOrder() ? w("piece.yes") : w("piece.no")));
        }
    }

    private static void recorded(List<FactLine> facts, String label, String text) {
        if (!text.isEmpty()) {
            facts.add(new FactLine(w(label), text));
        }
    }
}
