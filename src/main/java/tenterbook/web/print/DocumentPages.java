package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PageSize;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.kind.Composition;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementId;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.fair.Fair;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;
import tenterbook.words.Language;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Documents: choosing, a preview of the first page and the words, and the PDF. */
public final class DocumentPages {
    /** More than a reader has patience for; each is set with its photographs while one waits. */
    private static final int MOST = 200;

    /** So many documents are laid out before they are shown; all are when they are issued. */
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
    }

    /**
     * The page.
     *
     * @param form what was chosen and typed
     * @param problem why no document can be made; empty where it can
     * @param lacking what must be known before it may be issued
     * @param words of the first document, in order
     * @param papers how many documents there will be
     * @param preview address of the picture of the first page; empty where there is none
     * @param shown code of what is shown, see {@link Preview}
     * @param parties names to choose from
     * @param agreements loans or consignments to choose from
     * @param fairs to choose from; none where the document is for none
     * @param issued documents issued before for these pieces, newest first
     * @param typedNumbers for the field again, unknown numbers included
     */
    public record DocumentView(
            Form form,
            DocumentKind kind,
            PageSize page,
            Language language,
            String numbers,
            int pieces,
            String problem,
            List<Lack> lacking,
            List<String> words,
            int papers,
            String preview,
            String shown,
            List<String> parties,
            List<Choices.Choice> agreements,
            List<Choices.Choice> fairs,
            List<IssuedPaper> issued,
            String typedNumbers) {
        /** Whether an unknown number was typed; nothing is issued until that is corrected. */
        public boolean mistyped() {
            return !typedNumbers.equals(numbers);
        }
    }

    /**
     * What must be known before a document may be issued.
     *
     * @param agreement in which it is to be recorded; null where it is recorded elsewhere
     */
    public record Lack(String sentence, @Nullable AgreementId agreement) {
        static Lack of(Written lacking) {
            Object agreement =
                    lacking instanceof Message message ? message.args().get("agreement") : null;
            return new Lack(w(lacking), agreement instanceof AgreementId id ? id : null);
        }
    }

    private void show(Context ctx) throws IOException {
        show(ctx, ctx.queryParamMap(), "", true);
    }

    /**
     * @param notIssued why nothing was issued; empty before that is tried
     * @param possible whether it can be issued as far as was tried
     */
    private void show(Context ctx, Map<String, List<String>> parameters, String notIssued, boolean possible)
            throws IOException {
        List<String> asked = numbers(parameters);
        ChosenPieces.LookedUp looked =
                ChosenPieces.lookUp(site, asked.stream().limit(MOST).toList());
        List<Saved<Piece>> pieces = looked.pieces();
        if (!looked.unknown().isEmpty()) {
            ctx.status(422);
        }
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        String numbers =
                pieces.stream().map(piece -> piece.record().shown().value()).collect(Collectors.joining(", "));
        String problem = asked.size() > MOST ? w("issuing.at-most-the-first", "most", MOST) : notIssued;
        problem = problem.isEmpty() ? looked.trouble() : problem;
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
                settings.language(),
                numbers,
                pieces.size(),
                problem,
                drafts.stream()
                        .flatMap(draft -> draft.lacking().stream())
                        .map(Lack::of)
                        .distinct()
                        .toList(),
                drafts.isEmpty() ? List.of() : drafts.get(0).text().words(),
                drafts.size(),
                drafts.isEmpty() || !possible ? "" : preview(parameters, pieces),
                Preview.of(settings, drafts.stream().limit(TRIED).toList()),
                parties(),
                agreements(settings.kind()),
                fairs(settings.kind()),
                before(pieces),
                looked.unknown().isEmpty() ? numbers : looked.typed());
        Html.show(
                ctx,
                "documents",
                Map.of(
                        "page",
                        site.page(ctx, w("paper.documents"), "print"),
                        "view",
                        view,
                        "picker",
                        PiecePicker.of(site, parameters, PrintPages.numbers(pieces))));
    }

    private List<String> numbers(Map<String, List<String>> parameters) {
        return ChosenPieces.find(site, parameters, new DocumentParameters(parameters).search(), MOST)
                .numbers();
    }

    private byte[] set(List<DocumentDraft> drafts, DocumentSettings settings) throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        DocumentPaper.pdf(
                drafts.stream().map(DocumentDraft::text).toList(), settings, photographs(), pdf, site.clock());
        return pdf.toByteArray();
    }

    private PhotoSource photographs() {
        return PhotoSource.of(site.previews());
    }

    private List<String> parties() {
        return site.ledger().all(Kinds.PARTY).stream()
                .map(Saved::record)
                .map(Party::title)
                .sorted()
                .toList();
    }

    private List<Choices.Choice> agreements(DocumentKind kind) {
        if (!kind.agreed() && !kind.goods()) {
            return List.of();
        }
        AgreementKind wanted = kind == DocumentKind.LOAN_SCHEDULE ? AgreementKind.LOAN : AgreementKind.CONSIGNMENT;
        return site.ledger().all(Kinds.AGREEMENT).stream()
                .map(Saved::record)
                .filter(each -> kind.goods() || each.kind() == wanted)
                .sorted(Agreement.IN_TIME.reversed())
                .map(each -> new Choices.Choice(each.id().value(), each.title()))
                .toList();
    }

    private List<Choices.Choice> fairs(DocumentKind kind) {
        return !kind.goods()
                ? List.of()
                : site.records(Kinds.FAIR).stream()
                        .sorted(Fair.IN_TIME.reversed())
                        .map(each -> new Choices.Choice(each.id().value(), each.title()))
                        .toList();
    }

    /** The first page needs only the first piece, unless all are in one document. */
    private String preview(Map<String, List<String>> parameters, List<Saved<Piece>> pieces) {
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        String numbers = pieces.stream()
                .limit(settings.kind().each() ? 1 : MOST)
                .map(piece -> piece.record().number().value())
                .collect(Collectors.joining(","));
        return "/documents/preview.png?pieces=" + Address.encoded(numbers) + new DocumentParameters(parameters).query();
    }

    private void preview(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        List<Saved<Piece>> pieces = ChosenPieces.saved(site, numbers(parameters));
        byte[] pdf = set(Composition.of(site.archive(), pieces, settings, site.today()), settings);
        Uncached.send(
                ctx,
                "image/png",
                DocumentPaper.png(pdf, 1, settings.page().widthMm() < 160 ? PREVIEW_DPI * 1.4 : PREVIEW_DPI));
    }

    /** Prints. The PDF and the papers are in the archive before it is sent. */
    private void issue(Context ctx) throws IOException {
        Map<String, List<String>> parameters = ctx.formParamMap();
        DocumentSettings settings = new DocumentParameters(parameters).settings();
        List<String> numbers = numbers(parameters);
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            if (numbers.size() > MOST) {
                throw Refusal.of("issuing.at-most", "most", MOST);
            }
            ChosenPieces.LookedUp looked = ChosenPieces.lookUp(site, numbers);
            if (!looked.unknown().isEmpty()) {
                throw new IllegalArgumentException(looked.trouble());
            }
            List<DocumentDraft> drafts = Composition.of(site.archive(), looked.pieces(), settings, site.today());
            String code = Preview.of(settings, drafts.stream().limit(TRIED).toList());
            if (!Preview.isShown(parameters.get(Preview.SHOWN), code)) {
                show(ctx, parameters, w("issuing.shown-once-more"), true);
                return;
            }
            List<IssuedPaper> papers =
                    DocumentIssuer.print(site.archive(), drafts, "", photographs(), pdf, site.clock(), site.author());
            IssuedPages.send(ctx, pdf.toByteArray(), papers.get(0));
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            show(ctx, parameters, w("issuing.nothing-issued", "why", Words.sentence(e)), false);
        }
    }

    private List<IssuedPaper> before(List<Saved<Piece>> pieces) {
        return pieces.stream()
                .limit(20)
                .map(piece -> Papers.of(site.ledger(), piece.record().number().value()))
                .flatMap(papers -> papers.readable().stream())
                .distinct()
                .filter(DocumentIssuer::isDocument)
                .sorted(java.util.Comparator.comparing(IssuedPaper::issuedAt).reversed())
                .limit(10)
                .toList();
    }
}
