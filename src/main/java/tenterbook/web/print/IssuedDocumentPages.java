package tenterbook.web.print;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentLines;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.ledger.Saved;
import tenterbook.web.Site;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Language;
import tenterbook.words.Message;

/** Documents issued before: their words, and their PDF again. */
public final class IssuedDocumentPages {
    private final Site site;

    public IssuedDocumentPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/documents/issued/{id}", this::show);
        routes.get("/documents/issued/{id}/pdf", this::pdf);
    }

    private IssuedPaper paper(Context ctx) {
        String id = ctx.pathParam("id");
        return site.ledger()
                .find(Kinds.ISSUED_PAPER, id)
                .map(Saved::record)
                .filter(DocumentIssuer::isDocument)
                .orElseThrow(() -> new NotFound(Message.of("not-here.issued-document", "id", id)));
    }

    /**
     * What was issued, word for word, and which records have changed since. Of a document in the form of a newer program
     * the bare words are shown.
     */
    private void show(Context ctx) {
        IssuedPaper paper = paper(ctx);
        Map<String, Boolean> changed = new HashMap<>();
        paper.pieces()
                .forEach(each -> changed.put(
                        each.piece().value(),
                        site.ledger()
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
                        "language",
                        language(paper).code(),
                        "stored",
                        site.archive().papers().trouble(paper).map(Words::w).orElse("")));
    }

    /** English where its settings are not understood. */
    private static Language language(IssuedPaper paper) {
        try {
            return DocumentSettings.of(paper).language();
        } catch (IllegalArgumentException e) {
            return Language.ENGLISH;
        }
    }

    private void pdf(Context ctx) throws IOException {
        IssuedPaper paper = paper(ctx);
        IssuedPages.send(ctx, PaperPdf.of(site.archive(), paper, PhotoSource.of(site.previews())), paper);
    }
}
