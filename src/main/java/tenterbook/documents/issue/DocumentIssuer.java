package tenterbook.documents.issue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentLines;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.labelling.StoredSettings;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.words.Joined;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * Issues documents: lays them out, stores their PDF, and then stores their exact words in the ledger with the name of the file.
 */
public final class DocumentIssuer {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);

    private DocumentIssuer() {}

    /**
     * Stores the PDF of each draft in the archive and a paper of each in the ledger, in one act; then writes one PDF of all to
     * {@code out}.
     *
     * @param replaces the paper that they replace; empty for none
     * @throws IllegalArgumentException where a draft lacks what must be known; nothing is kept
     * @throws tenterbook.typeset.DoesNotFit where words have no room; nothing is kept
     * @throws tenterbook.typeset.UnsupportedCharacter where a character cannot be set; nothing is kept
     */
    public static List<IssuedPaper> print(
            Archive archive,
            List<DocumentDraft> drafts,
            String replaces,
            PhotoSource photographs,
            OutputStream out,
            Clock clock,
            String author)
            throws IOException {
        List<Written> lacking = drafts.stream()
                .flatMap(draft -> draft.lacking().stream())
                .distinct()
                .toList();
        if (!lacking.isEmpty()) {
            throw Refusal.of("document.refused.lacking", "lacking", new Joined(" ", lacking));
        }
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        String stamp = "paper-" + STAMP.format(at);
        // Printed from the stored lines, so that words and file cannot differ.
        List<DocumentText> kept = drafts.stream()
                .map(draft -> DocumentLines.read(paper(draft, stamp, replaces, at)))
                .toList();
        DocumentSettings settings = drafts.get(0).settings();
        byte[] all = pdf(kept, settings, photographs, at);
        List<IssuedPaper.Pdf> files = new ArrayList<>();
        for (DocumentText text : kept) {
            files.add(archive.papers().store(kept.size() == 1 ? all : pdf(List.of(text), settings, photographs, at)));
        }
        List<IssuedPaper> issued = archive.ledger().write(author, act -> {
            List<IssuedPaper> papers = new ArrayList<>();
            for (DocumentDraft draft : drafts) {
                String id = free(act, stamp, drafts.size() == 1 ? 0 : papers.size() + 1);
                IssuedPaper paper = paper(draft, id, replaces, at).with(files.get(papers.size()));
                papers.add(act.create(Kinds.ISSUED_PAPER, paper).record());
            }
            return papers;
        });
        out.write(all);
        return issued;
    }

    /** Another paper may have been issued at the same time. */
    private static String free(LedgerTransaction act, String stamp, int from) {
        for (int number = from; ; number++) {
            String id = number == 0 ? stamp : stamp + "-" + number;
            if (act.find(Kinds.ISSUED_PAPER, id).isEmpty()) {
                return id;
            }
        }
    }

    /** Whether the paper is a document kept with its settings, and no label. */
    public static boolean isDocument(IssuedPaper paper) {
        return paper.settings().has(DocumentSettings.STORED) && !paper.words().isEmpty();
    }

    /**
     * Lays an issued document out, from the paper alone and as of the time it was issued.
     *
     * @throws IllegalArgumentException where it keeps no document that this program understands
     */
    static byte[] laidOut(IssuedPaper paper, PhotoSource photographs) throws IOException {
        return pdf(List.of(DocumentLines.read(paper)), DocumentSettings.of(paper), photographs, paper.issuedAt());
    }

    private static byte[] pdf(List<DocumentText> texts, DocumentSettings settings, PhotoSource photographs, Instant at)
            throws IOException {
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        Clock then = Clock.fixed(at, ZoneOffset.UTC);
        DocumentPaper.pdf(texts, settings, photographs, pdf, then);
        return pdf.toByteArray();
    }

    private static IssuedPaper paper(DocumentDraft draft, String id, String replaces, Instant at) {
        DocumentLines lines = DocumentLines.of(draft.text());
        ObjectNode settings = JsonNodeFactory.instance.objectNode();
        settings.set(DocumentSettings.STORED, StoredSettings.json(draft.settings()));
        if (!draft.origin().equals(DocumentOrigin.NONE)) {
            settings.set(DocumentOrigin.STORED, StoredSettings.json(draft.origin()));
        }
        return new IssuedPaper(
                id,
                draft.text().kind(),
                "",
                draft.text().template(),
                List.of(),
                at,
                draft.pieces().stream()
                        .map(piece -> new IssuedPaper.Issued(
                                piece.record().number(),
                                piece.version(),
                                lines.pieces().getOrDefault(piece.record().number(), List.of()),
                                "",
                                List.of()))
                        .toList(),
                settings,
                lines.words(),
                replaces,
                null);
    }
}
