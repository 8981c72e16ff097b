package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.issue.IssuedLabelStatus;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;
import tenterbook.words.Refusal;

/** A printed paper: its words, what has changed since, and its PDF again. */
public final class IssuedPages {
    private static final String PDF = ".pdf";
    /** Pieces shown word for word; those in doubt come first. */
    private static final int MOST_SHOWN = 200;

    private final Site site;

    public IssuedPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/print/issued/{id}", this::show);
    }

    /**
     * An issued paper.
     *
     * @param request what was asked; null where it cannot be set again
     * @param choices parameters that print the same again
     * @param pieces those in doubt first, at most {@value #MOST_SHOWN}
     * @param numbers every piece, with commas
     * @param replacedBy the papers that were issued in its place
     * @param erased whether a person was taken out of it, so that its PDF is gone
     * @param trouble why its stored PDF cannot be sent; empty where it can
     */
    public record IssuedView(
            IssuedPaper paper,
            PrintSettings request,
            Map<String, String> choices,
            List<IssuedPaperView> pieces,
            String numbers,
            int inDoubt,
            List<IssuedPaper> replacedBy,
            boolean erased,
            String trouble) {}

    private void show(Context ctx) throws IOException {
        String id = ctx.pathParam("id");
        boolean pdf = id.endsWith(PDF);
        String name = pdf ? id.substring(0, id.length() - PDF.length()) : id;
        IssuedPaper paper = site.saved(Kinds.ISSUED_PAPER, name).record();
        if (DocumentIssuer.isDocument(paper)) {
            ctx.redirect("/documents/issued/" + name + (pdf ? "/pdf" : ""));
            return;
        }
        if (pdf) {
            send(ctx, paper);
            return;
        }
        List<IssuedPaperView> pieces = pieces(paper);
        PrintSettings request = PrintSettings.of(paper).orElse(null);
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("titles.printed-on", "when", paper.issuedAt()), "print"));
        values.put(
                "view",
                new IssuedView(
                        paper,
                        request,
                        request == null ? Map.of() : PrintParameters.of(request),
                        pieces.stream().limit(MOST_SHOWN).toList(),
                        String.join(
                                ",",
                                paper.pieces().stream()
                                        .map(issued -> issued.piece().value())
                                        .toList()),
                        (int) pieces.stream().filter(IssuedPaperView::inDoubt).count(),
                        replacedBy(paper),
                        PaperPdf.erased(site.archive(), paper),
                        site.archive().papers().trouble(paper).map(Words::w).orElse("")));
        Html.show(ctx, "issued", values);
    }

    private List<IssuedPaperView> pieces(IssuedPaper paper) {
        Map<String, Piece> now = site.archive()
                .ledger()
                .records(
                        Kinds.PIECE,
                        paper.pieces().stream()
                                .map(issued -> issued.piece().value())
                                .toList());
        List<Piece> there = List.copyOf(now.values());
        Map<String, IssuedLabelStatus> today = new HashMap<>();
        var facts = PieceReader.all(site.archive(), there);
        for (IssuedPaper.Issued issued : paper.pieces()) {
            int at = there.indexOf(now.get(issued.piece().value()));
            if (at >= 0) {
                today.put(issued.piece().value(), IssuedLabelStatus.of(paper, issued, facts.get(at)));
            }
        }
        List<IssuedPaperView> views = new ArrayList<>();
        for (IssuedPaper.Issued issued : paper.pieces()) {
            String number = issued.piece().value();
            boolean newer = paper.pieces().size() <= MOST_SHOWN
                    && IssuedPaperView.superseded(paper, IssuedPaperView.papers(site, number));
            views.add(new IssuedPaperView(paper, issued, today.get(number), newer));
        }
        views.sort(java.util.Comparator.comparing(view -> !view.inDoubt()));
        return views;
    }

    private List<IssuedPaper> replacedBy(IssuedPaper paper) {
        return paper.pieces().stream()
                .limit(1)
                .flatMap(issued -> IssuedPaperView.papers(site, issued.piece().value()).stream())
                .filter(other -> other.replaces().equals(paper.id()))
                .toList();
    }

    /** The stored file; laid out again where another number of copies or another first place is asked for. */
    private void send(Context ctx, IssuedPaper paper) throws IOException {
        PaperPdf.refuseErased(site.archive(), paper);
        PrintSettings settings = PrintSettings.of(paper).orElse(null);
        if (settings != null) {
            PrintSettings asked = settings.times(
                            whole(ctx, "copies", settings.placement().copies()))
                    .startingAt(whole(ctx, "from", settings.placement().from()));
            if (!asked.equals(settings)) {
                ByteArrayOutputStream pdf = new ByteArrayOutputStream();
                LabelIssuer.reprint(paper, asked, pdf, Progress.UNWATCHED);
                send(ctx, pdf.toByteArray(), paper);
                return;
            }
        }
        send(ctx, PaperPdf.of(site.archive(), paper, PhotoSource.of(site.previews())), paper);
    }

    private static int whole(Context ctx, String name, int absent) {
        String text = ctx.queryParam(name);
        if (text == null || text.isBlank()) {
            return absent;
        }
        if (!text.strip().matches("\\d{1,5}")) {
            throw Refusal.of("print.whole-number", "name", name, "found", text);
        }
        return Integer.parseInt(text.strip());
    }

    public static void send(Context ctx, byte[] pdf, IssuedPaper paper) {
        Uncached.pdf(ctx, paper.kind() + "-" + paper.id(), pdf);
    }
}
