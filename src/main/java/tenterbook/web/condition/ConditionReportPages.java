package tenterbook.web.condition;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.PageSize;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.kind.ConditionReport;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;
import tenterbook.web.print.DocumentParameters;
import tenterbook.web.print.IssuedPages;
import tenterbook.words.Language;
import tenterbook.words.Message;

/** The condition report of an examination on paper: pictures of its pages, and issuing it, kept word for word. */
public final class ConditionReportPages {
    private static final double PREVIEW_DPI = 80;
    private final Site site;

    public ConditionReportPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/examinations/{id}/report", ctx -> show(ctx, ctx.queryParamMap(), ""));
        routes.get("/examinations/{id}/report/{page}.png", this::picture);
        routes.post("/examinations/{id}/report", this::issue);
    }

    /**
     * The page.
     *
     * @param problem why it cannot be set; empty where it can
     * @param pages how many pages the paper has; 0 where it cannot be set
     * @param issued reports of this examination issued before, newest first
     */
    public record ConditionReportView(
            Saved<Examination> saved,
            PageSize sheet,
            Language language,
            String problem,
            int pages,
            List<String> words,
            List<IssuedPaper> issued) {
        /** The version of the examination that a paper was printed from. */
        public String version(IssuedPaper paper) {
            Integer version = DocumentOrigin.of(paper).examinationVersion();
            return version == null ? w("issuing.not-kept") : version.toString();
        }
    }

    private Saved<Examination> saved(Context ctx) {
        String id = ctx.pathParam("id");
        return site.saved(Kinds.EXAMINATION, id);
    }

    private DocumentDraft draft(Saved<Examination> saved, Map<String, List<String>> parameters) {
        Saved<Piece> piece = site.saved(Kinds.PIECE, saved.record().piece().value());
        return ConditionReport.of(
                site.archive(),
                saved,
                piece,
                new DocumentParameters(parameters).settings(DocumentKind.CONDITION_REPORT));
    }

    private int set(DocumentDraft draft, ByteArrayOutputStream out) throws IOException {
        return DocumentPaper.pdf(
                List.of(draft.text()), draft.settings(), PhotoSource.of(site.previews()), out, site.clock());
    }

    private void show(Context ctx, Map<String, List<String>> parameters, String notIssued) throws IOException {
        Saved<Examination> saved = saved(ctx);
        DocumentDraft draft = draft(saved, parameters);
        String problem = notIssued;
        int pages = 0;
        try {
            pages = set(draft, new ByteArrayOutputStream());
        } catch (IllegalArgumentException e) {
            problem = problem.isEmpty() ? Words.sentence(e) : problem;
        }
        ConditionReportView view = new ConditionReportView(
                saved,
                draft.settings().page(),
                draft.settings().language(),
                problem,
                pages,
                draft.text().words(),
                before(saved.record()));
        Html.show(
                ctx,
                "condition-report",
                Map.of(
                        "page",
                        site.page(
                                ctx,
                                w(
                                        "titles.condition-report",
                                        "id",
                                        saved.record().id()),
                                "pieces"),
                        "view",
                        view));
    }

    private List<IssuedPaper> before(Examination examination) {
        return Papers.of(site.ledger(), examination.piece().value()).readable().stream()
                .filter(paper ->
                        examination.id().value().equals(DocumentOrigin.of(paper).examination()))
                .toList();
    }

    private void picture(Context ctx) throws IOException {
        String page = ctx.pathParam("page");
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        int pages = set(draft(saved(ctx), ctx.queryParamMap()), pdf);
        if (!page.matches("\\d{1,4}") || Integer.parseInt(page) < 1 || Integer.parseInt(page) > pages) {
            throw new NotFound(Message.of("not-here.page-of-report", "page", page));
        }
        Uncached.send(ctx, "image/png", DocumentPaper.png(pdf.toByteArray(), Integer.parseInt(page), PREVIEW_DPI));
    }

    /** Prints. The paper is in the ledger before the PDF is sent. */
    private void issue(Context ctx) throws IOException {
        DocumentDraft draft = draft(saved(ctx), ctx.formParamMap());
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        try {
            IssuedPaper paper = DocumentIssuer.print(
                            site.archive(),
                            List.of(draft),
                            "",
                            PhotoSource.of(site.previews()),
                            pdf,
                            site.clock(),
                            site.author())
                    .get(0);
            IssuedPages.send(ctx, pdf.toByteArray(), paper);
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            show(ctx, ctx.formParamMap(), w("issuing.nothing-issued", "why", Words.sentence(e)));
        }
    }
}
