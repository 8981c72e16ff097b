package tenterbook.documents.issue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.PhotoSource;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The PDF of an issued paper: the stored file, byte for byte. A paper issued before files were stored is laid out once from its
 * words; the file is stored and the paper saved again with a note on it.
 */
public final class PaperPdf {
    /** Note of the revision that names a file made afterwards. */
    static final String NOTE = Message.of("document.stored-afterwards").inEnglish();

    /** The author of such a revision, which no person asked for. */
    static final String AUTHOR = "Tenterbook";

    private PaperPdf() {}

    /** Whether an erasure took a person out of it. It has no PDF and is not laid out again, since it would not be what was issued. */
    public static boolean erased(Archive archive, IssuedPaper paper) {
        return paper.pdf() == null && archive.ledger().erasedFrom(Kinds.ISSUED_PAPER.key(paper.id()));
    }

    /**
     * @throws PaperErased where it was erased
     */
    public static void refuseErased(Archive archive, IssuedPaper paper) {
        if (erased(archive, paper)) {
            throw new PaperErased(paper);
        }
    }

    /**
     * @throws PaperErased where it was erased
     * @throws ArchiveProblem where the stored file is missing or changed
     * @throws IllegalArgumentException where none is stored and none can be laid out, with the reason
     */
    public static byte[] of(Archive archive, IssuedPaper paper, PhotoSource photographs) throws IOException {
        if (paper.pdf() == null && archive.folder().readOnly()) {
            refuseErased(archive, paper);
            return laidOut(paper, photographs);
        }
        return archive.papers().read(paper.pdf() == null ? stored(archive, paper.id(), photographs) : paper.pdf());
    }

    /**
     * Stores the file of every paper that has none, oldest first. A paper that cannot be laid out stays unchanged.
     *
     * @return the reason for each of these
     * @throws Progress.Cancelled if asked to stop; what is stored stays
     */
    public static List<String> storeAll(Archive archive, PhotoSource photographs, Progress progress) {
        List<String> left = new ArrayList<>();
        List<String> ids = archive.ledger().allIdsEverUsed(Kinds.ISSUED_PAPER);
        long done = 0;
        for (String id : ids) {
            progress.at(++done, ids.size(), Message.of("document.looking-for-papers"));
            progress.orStop();
            for (IssuedPaper paper : Papers.named(archive.ledger(), List.of(id)).readable()) {
                if (paper.pdf() == null && !paper.settings().isEmpty() && !erased(archive, paper)) {
                    try {
                        stored(archive, id, photographs);
                    } catch (IOException | RuntimeException e) {
                        LoggerFactory.getLogger(PaperPdf.class).warn("No PDF was stored of {}", id, e);
                        left.add(id + ": " + Explained.of(e).inEnglish());
                    }
                }
            }
        }
        return left;
    }

    private static IssuedPaper.Pdf stored(Archive archive, String id, PhotoSource photographs) throws IOException {
        Saved<IssuedPaper> saved = archive.ledger()
                .find(Kinds.ISSUED_PAPER, id)
                .orElseThrow(() -> Refusal.of("document.refused.not-in-use", "paper", id));
        if (saved.record().pdf() != null) {
            return saved.record().pdf();
        }
        refuseErased(archive, saved.record());
        IssuedPaper whole = saved.record().with(archive.papers().store(laidOut(saved.record(), photographs)));
        try {
            archive.ledger().write(AUTHOR, act -> act.save(Kinds.ISSUED_PAPER, whole, saved.version(), NOTE));
            return whole.pdf();
        } catch (Conflict meanwhile) {
            // If two threads store it at the same time, the first save counts.
            return archive.ledger()
                    .find(Kinds.ISSUED_PAPER, id)
                    .map(now -> now.record().pdf())
                    .orElseThrow(() -> meanwhile);
        }
    }

    private static byte[] laidOut(IssuedPaper paper, PhotoSource photographs) throws IOException {
        if (DocumentIssuer.isDocument(paper)) {
            return DocumentIssuer.laidOut(paper, photographs);
        }
        PrintSettings settings = PrintSettings.of(paper)
                .orElseThrow(() -> Refusal.of("document.refused.words-alone", "paper", paper.id()));
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        LabelIssuer.reprint(paper, settings, pdf, Progress.UNWATCHED);
        return pdf.toByteArray();
    }
}
