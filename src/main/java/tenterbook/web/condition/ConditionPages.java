package tenterbook.web.condition;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.facts.Condition;
import tenterbook.facts.PieceReader;
import tenterbook.ledger.Saved;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Comparison;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.Signatory;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.web.record.FactLine;
import tenterbook.words.Message;

/** The condition of a piece: its examinations, and one of them with its photographs and marks. */
public final class ConditionPages {
    private final Site site;
    private final PhotoRegistration registration;

    public ConditionPages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/{number}/condition", this::list);
        routes.get("/examinations/{id}", this::show);
    }

    private Piece piece(String number) {
        return site.saved(Kinds.PIECE, number).record();
    }

    private Saved<Examination> saved(Context ctx) {
        String id = ctx.pathParam("id");
        return site.saved(Kinds.EXAMINATION, id);
    }

    /**
     * An examination in the list of a piece.
     *
     * @param by who examined
     * @param changes since the one it was made against, in words; empty where there was none
     */
    public record Line(Examination examination, String by, String changes) {}

    private void list(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        Condition condition = PieceReader.of(site.archive(), piece).condition();
        List<Examination> all = condition.examinations();
        List<Line> lines = new ArrayList<>();
        for (Examination each : all) {
            lines.add(
                    0,
                    new Line(
                            each,
                            person(each.examiner(), each.party()),
                            comparison(each, all)
                                    .map(made -> Words.w(made.inWords()))
                                    .orElse("")));
        }
        Html.show(
                ctx,
                "condition",
                Map.of(
                        "page", site.page(ctx, w("titles.condition", "piece", piece.shown()), "pieces"),
                        "piece", piece,
                        "lines", lines,
                        "condition", condition,
                        "doubts", doubts(all)));
    }

    /** Doubts about the days of examinations. */
    private List<String> doubts(List<Examination> examinations) {
        return examinations.stream()
                .filter(each -> !LastExamined.doubt(each.when(), site.today()).isEmpty())
                .map(each -> w(
                        "examination-form.dated",
                        "id",
                        each.id(),
                        "when",
                        each.when(),
                        "doubt",
                        LastExamined.doubt(each.when(), site.today())))
                .toList();
    }

    /** @throws NotFound where {@code id} names none of them */
    static Examination of(Piece piece, List<Examination> all, String id) {
        return all.stream()
                .filter(each -> each.id().value().equals(id))
                .findFirst()
                .orElseThrow(() ->
                        new NotFound(Message.of("not-here.examination-of-piece", "id", id, "piece", piece.number())));
    }

    private static Optional<Comparison> comparison(Examination examination, List<Examination> all) {
        return Optional.ofNullable(examination.earlier())
                .flatMap(id ->
                        all.stream().filter(other -> other.id().equals(id)).findFirst())
                .map(before -> Comparison.of(before, examination));
    }

    /** As in 'Tomé Quarral, Museu do Sarelho'. */
    private String person(String name, PartyId party) {
        String title = party == null
                ? ""
                : site.archive().party(party.value()).map(of -> of.title()).orElse(party.value());
        return Stream.of(name, title).filter(text -> !text.isEmpty()).distinct().collect(Collectors.joining(", "));
    }

    /**
     * An examination as its page shows it.
     *
     * @param comparison with the examination chosen, else with the one it was made against; null where there is none
     * @param others of the piece that it can be compared with
     */
    public record ConditionView(
            Piece piece,
            Saved<Examination> saved,
            List<MarkedPhotograph> plates,
            List<FactLine> facts,
            List<FactLine> advice,
            List<FactLine> hands,
            Comparison comparison,
            List<Examination> others) {
        public Examination examination() {
            return saved.record();
        }

        /** Where an observation is marked, as in 'front, 42 % across, 31 % down'. */
        public String marked(Observation observation) {
            return observation.marks().stream()
                    .map(mark -> plates.stream()
                                    .filter(plate ->
                                            plate.digest().equals(mark.photo().hex()))
                                    .findFirst()
                                    .map(MarkedPhotograph::label)
                                    .orElse("a photograph")
                            + ", " + Words.w(mark.inWords()))
                    .collect(Collectors.joining("; "));
        }
    }

    private void show(Context ctx) {
        Saved<Examination> saved = saved(ctx);
        Examination examination = saved.record();
        Piece piece = piece(examination.piece().value());
        List<Examination> all = site.archive().examinationsOf(piece.number());
        String against = Optional.ofNullable(ctx.queryParam("against")).orElse("");
        Optional<Comparison> comparison = against.isEmpty()
                ? comparison(examination, all)
                : Optional.of(Comparison.of(of(piece, all, against), examination));
        Map<String, Object> values = new HashMap<>();
        values.put(
                "page",
                site.page(ctx, w("titles.examination", "id", examination.id(), "piece", piece.shown()), "pieces"));
        values.put(
                "view",
                new ConditionView(
                        piece,
                        saved,
                        MarkedPhotograph.of(examination, registration::find),
                        facts(examination),
                        advice(examination),
                        Stream.of(
                                        hand(w("examination-form.handed-over-by"), examination.handedOver()),
                                        hand(w("examination-form.received-by"), examination.received()))
                                .flatMap(Optional::stream)
                                .toList(),
                        comparison.orElse(null),
                        all.stream()
                                .filter(other -> !other.id().equals(examination.id()))
                                .toList()));
        values.put("doubts", doubts(List.of(examination)));
        Html.show(ctx, "examination", values);
    }

    private List<FactLine> facts(Examination examination) {
        return List.of(
                new FactLine(w("examination-form.when"), w(examination.when())),
                new FactLine(w("examination-form.why"), FactLine.or(examination.reason())),
                new FactLine(w("examination-form.where"), FactLine.or(examination.place())),
                new FactLine(
                        w("examination-form.examined-by"),
                        FactLine.or(person(examination.examiner(), examination.party()))),
                new FactLine(w("examination-form.how"), FactLine.or(examination.means())),
                FactLine.of(w("examination-form.length-then"), examination.length()),
                FactLine.of(w("examination-form.width-then"), examination.width()));
    }

    private static List<FactLine> advice(Examination examination) {
        return List.of(
                new FactLine(w("examination-form.handling"), FactLine.or(examination.handling())),
                new FactLine(w("examination-form.light-and-showing"), FactLine.or(examination.light())),
                new FactLine(w("examination-form.packing"), FactLine.or(examination.packing())));
    }

    private Optional<FactLine> hand(String label, Signatory signatory) {
        if (!signatory.named()) {
            return Optional.empty();
        }
        String when = signatory.when().recorded() ? signatory.when().toString() : "";
        return Optional.of(new FactLine(label, FactLine.or(person(signatory.name(), signatory.party())), when));
    }
}
