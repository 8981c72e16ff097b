package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentKind;
import tenterbook.facts.Away;
import tenterbook.facts.Settlement;
import tenterbook.ledger.Saved;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.agreement.Payment;
import tenterbook.piece.agreement.PaymentKind;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Html;
import tenterbook.web.record.Choices;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.RecordView;

/** Loans and consignments: the list, one with its pieces and papers, and its form. */
public final class AgreementPages {
    private final Site site;
    private final RecordEditor<Agreement> editor;

    public AgreementPages(Site site) {
        this.site = site;
        this.editor = new RecordEditor<>(
                site,
                new Forms(site::currency).agreements(),
                new RecordEditor.About("agreement-form", "people", "/agreements"),
                agreement -> "/agreements/" + agreement.id(),
                () -> Map.of(
                        "kinds", Choices.words(AgreementKind.values()),
                        "parties", Choices.parties(site),
                        "paymentKinds", Choices.words(PaymentKind.values())));
    }

    public void routes(RoutesConfig routes) {
        routes.get("/agreements", this::list);
        routes.get("/agreements/new", ctx -> editor.showNew(ctx, () -> start(ctx)));
        routes.post("/agreements", this::saveNew);
        routes.get("/agreements/{id}", this::show);
        routes.get("/agreements/{id}/edit", ctx -> editor.showEdit(ctx, ctx.pathParam("id")));
        routes.post("/agreements/{id}/edit", ctx -> editor.save(ctx, ctx.pathParam("id")));
        routes.post("/agreements/{id}/withdraw", ctx -> editor.withdraw(ctx, ctx.pathParam("id")));
    }

    /** One line of the list. */
    public record AgreementLine(Agreement agreement, String party) {}

    /** One row of an agreement's page. */
    public record AgreedRow(AgreedPiece agreed, String title) {}

    /**
     * How an agreement stands today.
     *
     * @param end a sentence about its end; empty where there is nothing to be done about it
     */
    public record StandingView(
            String end, boolean overdue, List<Payment> payments, Settlement settlement, List<PaperLink> papers) {}

    /** A list of the agreement's pieces that may be printed. */
    public record PaperLink(String label, String address) {}

    private static List<PaperLink> lists(Agreement agreement) {
        String pieces =
                agreement.pieces().stream().map(each -> each.piece().value()).collect(Collectors.joining(","));
        return Stream.of(DocumentKind.PRICE_LIST, DocumentKind.PACKING_LIST, DocumentKind.CUSTOMS_LIST)
                .map(kind -> new PaperLink(
                        w(kind),
                        "/documents?kind=" + kind.code() + "&agreement=" + agreement.id() + "&pieces=" + pieces))
                .toList();
    }

    private StandingView standing(Agreement agreement) {
        List<Piece> pieces = site.archive().piecesOf(agreement);
        List<Away> away = pieces.stream()
                .flatMap(piece -> Away.of(piece, List.of(agreement)).stream())
                .filter(each -> agreement.equals(each.agreement()))
                .toList();
        boolean overdue = away.stream().anyMatch(each -> each.overdue(site.today()));
        String end = "";
        if (!away.isEmpty() && agreement.until().recorded()) {
            end = w(
                    overdue ? "agreement.overdue" : "agreement.ends",
                    "until",
                    agreement.until(),
                    "pieces",
                    away.size());
        }
        return new StandingView(end, overdue, agreement.payments(), Settlement.of(agreement, pieces), lists(agreement));
    }

    private String next() {
        return Kinds.AGREEMENT_NUMBERS
                .next(start -> site.ledger().idsEverUsed(Kinds.AGREEMENT, start), site.year())
                .value();
    }

    /** For the pieces in the address, with commas between; in a consignment with the price asked for each. */
    private Form start(Context ctx) {
        Form form = Form.empty().put("id", next());
        String kind = ctx.queryParam("kind");
        form.put("kind", "consignment".equals(kind) ? AgreementKind.CONSIGNMENT : AgreementKind.LOAN);
        String pieces = ctx.queryParam("pieces");
        int at = 0;
        for (String number : pieces == null ? new String[] {""} : pieces.split(",")) {
            String row = "pieces." + at++;
            form.put(row + ".piece", number.strip());
            if ("consignment".equals(kind)) {
                site.archive()
                        .piece(number.strip())
                        .map(Piece::price)
                        .ifPresent(asked -> form.put(row + ".value", asked));
            }
        }
        return form;
    }

    private void saveNew(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        if (!form.has("id")) {
            form.put("id", next());
        }
        editor.save(ctx, "", form, act -> {}, (act, agreement) -> {});
    }

    private String party(PartyId id) {
        return id == null
                ? ""
                : site.archive().party(id.value()).map(Party::title).orElse(id.value());
    }

    private void list(Context ctx) {
        List<AgreementLine> lines = site.ledger().all(Kinds.AGREEMENT).stream()
                .map(Saved::record)
                .sorted(Agreement.IN_TIME.reversed())
                .map(agreement -> new AgreementLine(agreement, party(agreement.party())))
                .toList();
        Html.show(
                ctx, "agreements", Map.of("page", site.page(ctx, w("agreement.title"), "people"), "agreements", lines));
    }

    private void show(Context ctx) {
        String id = ctx.pathParam("id");
        Agreement agreement = site.saved(Kinds.AGREEMENT, id).record();
        List<FactLine> facts = new ArrayList<>();
        facts.add(new FactLine(w("agreement.what"), w(agreement.kind().word())));
        facts.add(new FactLine(w("agreement.with"), FactLine.or(party(agreement.party()))));
        facts.add(new FactLine(w("agreement.purpose"), FactLine.or(agreement.purpose())));
        facts.add(new FactLine(w("agreement.agreed"), w(agreement.agreed())));
        facts.add(new FactLine(w("agreement.from"), w(agreement.from())));
        facts.add(new FactLine(w("agreement.until"), w(agreement.until())));
        facts.add(new FactLine(w("agreement.insurer"), FactLine.or(agreement.insurer())));
        facts.add(new FactLine(w("agreement.commission"), w(QuantityWords.withAssumedUnit(agreement.commission()))));
        facts.add(new FactLine(w("agreement.credit-line"), FactLine.or(agreement.creditLine())));
        facts.add(new FactLine(w("agreement.terms"), FactLine.or(agreement.terms())));
        facts.add(new FactLine(w("agreement.notes"), FactLine.or(agreement.notes())));
        List<AgreedRow> rows = agreement.pieces().stream()
                .map(each -> new AgreedRow(
                        each,
                        site.archive()
                                .piece(each.piece().value())
                                .map(Piece::title)
                                .orElse("")))
                .toList();
        String numbers =
                agreement.pieces().stream().map(each -> each.piece().value()).collect(Collectors.joining(","));
        RecordView view = RecordView.of(
                site,
                Kinds.AGREEMENT.key(id),
                w(Kinds.AGREEMENT.called()),
                agreement.title(),
                facts,
                "/documents?kind=" + (agreement.kind() == AgreementKind.LOAN ? "loan" : "consignment")
                        + "-schedule&valued=1&agreement=" + id + "&pieces=" + numbers);
        Html.show(
                ctx,
                "agreement",
                Map.of(
                        "page",
                        site.page(ctx, view.title(), "people"),
                        "view",
                        view,
                        "rows",
                        rows,
                        "standing",
                        standing(agreement)));
    }
}
