package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentLines;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.PageSize;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.documents.kind.Composition;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Documents: choosing, a preview of the first page and the words, the PDF, and papers issued before. */
public final class DocumentPages {
    /** As many pieces as a list is read with patience; each is set with its photographs while one waits. */
    private static final int MOST = 200;

    /** Of many documents the first few are laid out before they are shown; all are when they are issued. */
    private static final int TRIED = 10;

    private static final double PREVIEW_DPI = 90;

    private final Site site;

    public DocumentPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/documents", this::show);
        routes.get("/documents/preview.png", this::preview);
        routes.post("/documents/issue", this::issue);
        routes.get("/documents/issued/{id}", this::issued);
        routes.get("/documents/issued/{id}/pdf", this::again);
    }

    /**
     * The page.
     *
     * @param form what was chosen and typed
     * @param problem why no document can be made; empty where it can
     * @param words of the first document, in order
     * @param papers how many documents there will be
     * @param preview address of the picture of the first page; empty where there is none
     * @param parties names to choose from
     * @param issued documents issued before for these pieces, newest first
     * @param typedNumbers what stands in the field again, also numbers that are not here
     */
    public record DocumentView(
            Form form,
            DocumentKind kind,
            PageSize page,
            String numbers,
            int pieces,
            String problem,
            List<String> words,
            int papers,
            String preview,
            List<String> parties,
            List<IssuedPaper> issued,
            String typedNumbers) {
        /** Whether a number was typed that is not here; nothing is issued until that is mended. */
        public boolean mistyped() {
            return !typedNumbers.equals(numbers);
        }
    }

    private void show(Context ctx) throws IOException {
        show(ctx, ctx.queryParamMap(), "");
    }

    private void show(Context ctx, Map<String, List<String>> parameters, String said) throws IOException {
        List<String> asked = ChosenPieces.numbers(site, parameters, DocumentParameters.NAMES, MOST);
        ChosenPieces.Looked looked =
                ChosenPieces.look(site, asked.stream().limit(MOST).toList());
        List<Saved<Piece>> pieces = looked.pieces();
        if (!looked.unknown().isEmpty()) {
            ctx.status(422);
        }
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        String numbers =
                pieces.stream().map(piece -> piece.record().number().value()).collect(Collectors.joining(", "));
        String problem = asked.size() > MOST
                ? w("issuing.at-most-the-first", "most", MOST)
                : said.isEmpty() ? looked.trouble() : said;
        boolean possible = true;
        List<DocumentDraft> drafts = List.of();
        if (!pieces.isEmpty()) {
            try {
                drafts = Composition.of(site.archive(), pieces, settings, site.today());
                set(drafts.stream().limit(TRIED).toList(), settings);
            } catch (IllegalArgumentException e) {
                possible = false;
                problem = problem.isEmpty() ? Words.sentence(e) : problem;
            }
        }
        DocumentView view = new DocumentView(
                Form.of(parameters),
                settings.kind(),
                settings.page(),
                numbers,
                pieces.size(),
                problem,
                drafts.isEmpty() ? List.of() : drafts.get(0).text().words(),
                drafts.size(),
                drafts.isEmpty() || !possible || !said.isEmpty() ? "" : preview(parameters, pieces),
                parties(),
                before(pieces),
                looked.unknown().isEmpty() ? numbers : looked.typed());
        Html.show(ctx, "documents", Map.of("page", site.page(ctx, w("paper.documents"), "print"), "view", view));
    }

    private byte[] set(List<DocumentDraft> drafts, DocumentSettings settings) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        DocumentPaper.pdf(
                drafts.stream().map(DocumentDraft::text).toList(),
                settings.page(),
                settings.kind().dress(),
                photographs(),
                pdf,
                site.clock());
        return pdf.toByteArray();
    }

    private PhotoSource photographs() {
        return PhotoSource.of(site.previews());
    }

    private List<String> parties() {
        return site.archive().ledger().all(Kinds.PARTY).stream()
                .map(Saved::record)
                .map(Party::title)
                .sorted()
                .toList();
    }

    /** The first page needs the first piece alone, unless all stand in one document. */
    private String preview(Map<String, List<String>> parameters, List<Saved<Piece>> pieces) {
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        String numbers = pieces.stream()
                .limit(settings.kind().each() ? 1 : MOST)
                .map(piece -> piece.record().number().value())
                .collect(Collectors.joining(","));
        return "/documents/preview.png?pieces=" + PrintPages.encode(numbers)
                + new DocumentParameters(parameters).query();
    }

    private void preview(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        List<Saved<Piece>> pieces =
                ChosenPieces.saved(site, ChosenPieces.numbers(site, parameters, DocumentParameters.NAMES, MOST));
        byte[] pdf = set(Composition.of(site.archive(), pieces, settings, site.today()), settings);
        ctx.contentType("image/png");
        ctx.header("Cache-Control", "no-store");
        ctx.result(DocumentPaper.png(pdf, 1, settings.page().widthMm() < 160 ? PREVIEW_DPI * 1.4 : PREVIEW_DPI));
    }

    /** Prints, and keeps what was printed: the PDF and the papers are in the archive before it is sent. */
    private void issue(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.formParamMap();
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        List<String> numbers = ChosenPieces.numbers(site, parameters, DocumentParameters.NAMES, MOST);
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            if (numbers.size() > MOST) {
                throw Refusal.of("issuing.at-most", "most", MOST);
            }
            ChosenPieces.Looked looked = ChosenPieces.look(site, numbers);
            if (!looked.unknown().isEmpty()) {
                throw new IllegalArgumentException(looked.trouble());
            }
            List<DocumentDraft> drafts = Composition.of(site.archive(), looked.pieces(), settings, site.today());
            List<IssuedPaper> papers =
                    DocumentIssuer.print(site.archive(), drafts, "", photographs(), pdf, site.clock(), site.author());
            IssuedPages.send(ctx, pdf.toByteArray(), papers.get(0));
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            show(ctx, parameters, w("issuing.nothing-issued", "why", Words.sentence(e)));
        }
    }

    private List<IssuedPaper> before(List<Saved<Piece>> pieces) {
        return pieces.stream()
                .limit(20)
                .map(piece -> Papers.of(
                        site.archive().ledger(), piece.record().number().value()))
                .flatMap(papers -> papers.readable().stream())
                .distinct()
                .filter(DocumentIssuer::isDocument)
                .sorted(java.util.Comparator.comparing(IssuedPaper::issuedAt).reversed())
                .limit(10)
                .toList();
    }

    private IssuedPaper paper(Context ctx) {
        String id = ctx.pathParam("id");
        return site.archive()
                .ledger()
                .find(Kinds.ISSUED_PAPER, id)
                .map(Saved::record)
                .filter(DocumentIssuer::isDocument)
                .orElseThrow(() -> new NotFound(Message.of("not-here.issued-document", "id", id)));
    }

    /** What was issued, word for word, and which records have changed since. One of a newer program's form keeps its words. */
    private void issued(Context ctx) {
        IssuedPaper paper = paper(ctx);
        Map<String, Boolean> changed = new HashMap<>();
        paper.pieces()
                .forEach(each -> changed.put(
                        each.piece().value(),
                        site.archive()
                                .ledger()
                                .find(Kinds.PIECE, each.piece().value())
                                .map(now -> now.version() != each.version())
                                .orElse(true)));
        String title;
        List<String> words;
        boolean erased = PaperPdf.erased(site.archive(), paper);
        String trouble = "";
        try {
            DocumentText text = DocumentLines.read(paper);
            title = text.title();
            words = text.words();
        } catch (IllegalArgumentException e) {
            title = paper.id();
            words = DocumentLines.bare(paper);
            trouble = paper.pdf() == null ? Words.sentence(e) : "";
        }
        Html.show(
                ctx,
                "document-issued",
                Map.of(
                        "page",
                        site.page(ctx, title, "print"),
                        "paper",
                        paper,
                        "title",
                        title,
                        "words",
                        words,
                        "trouble",
                        trouble,
                        "changed",
                        changed,
                        "erased",
                        erased,
                        "stored",
                        site.archive().papers().trouble(paper).map(Words::w).orElse("")));
    }

    private void again(Context ctx) throws IOException {
        IssuedPaper paper = paper(ctx);
        IssuedPages.send(ctx, PaperPdf.of(site.archive(), paper, photographs()), paper);
    }
}
