package tenterbook.label.document;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.label.document.set.DocumentPaper;
import tenterbook.ledger.Writing;
import tenterbook.words.Refusal;

/** Issues documents: prints them and keeps their exact words in the ledger, both or neither; and prints them again. */
public final class IssueDocument {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);
    private static final String PAGE = "page";
    private static final String DRESS = "dress";

    private IssueDocument() {}

    /**
     * Writes one PDF of all drafts to {@code out} and a paper of each to the ledger, in one act.
     *
     * @param replaces the paper they are printed in place of; empty for none
     * @param out should be memory: what it got is worth nothing until this returns
     * @throws tenterbook.label.layout.DoesNotFit where words have no room; nothing is kept
     * @throws tenterbook.label.layout.CannotBeSet where a character cannot be set; nothing is kept
     */
    public static List<IssuedPaper> print(
            Archive archive,
            List<DocumentDraft> drafts,
            PageSize page,
            Dress dress,
            String replaces,
            Photographs photographs,
            OutputStream out,
            Clock clock,
            String author)
            throws IOException {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        String stamp = "paper-" + STAMP.format(at);
        // What is printed is what the papers keep, so that a later reprint cannot differ.
        List<DocumentText> kept = drafts.stream()
                .map(draft -> DocumentLines.read(paper(draft, stamp, page, dress, replaces, at)))
                .toList();
        DocumentPaper.pdf(kept, page, dress, photographs, out, as(at));
        return archive.ledger().write(author, act -> {
            List<IssuedPaper> papers = new ArrayList<>();
            for (DocumentDraft draft : drafts) {
                String id = free(act, stamp, drafts.size() == 1 ? 0 : papers.size() + 1);
                papers.add(act.create(Kinds.ISSUED_PAPER, paper(draft, id, page, dress, replaces, at))
                        .record());
            }
            return papers;
        });
    }

    /** Other paper may have been issued in the same moment. */
    private static String free(Writing act, String stamp, int from) {
        for (int number = from; ; number++) {
            String id = number == 0 ? stamp : stamp + "-" + number;
            if (act.find(Kinds.ISSUED_PAPER, id).isEmpty()) {
                return id;
            }
        }
    }

    /** Whether the paper is a document that can be laid out again from its lines. */
    public static boolean canBeSetAgain(IssuedPaper paper) {
        return paper.setting().containsKey(DRESS) && !paper.words().isEmpty();
    }

    /**
     * Lays an issued document out again, from the paper alone and as of the time it was issued.
     *
     * @throws IllegalArgumentException where it keeps no document
     */
    public static DocumentText again(IssuedPaper paper, Photographs photographs, OutputStream out) throws IOException {
        if (!canBeSetAgain(paper)) {
            throw Refusal.of("document.refused.no-document", "paper", paper.id());
        }
        DocumentText text = DocumentLines.read(paper);
        DocumentPaper.pdf(
                List.of(text),
                kept(PageSize.values(), paper, PAGE),
                kept(Dress.values(), paper, DRESS),
                photographs,
                out,
                as(paper.issuedAt()));
        return text;
    }

    private static Clock as(Instant instant) {
        return Clock.fixed(instant, ZoneOffset.UTC);
    }

    private static IssuedPaper paper(
            DocumentDraft draft, String id, PageSize page, Dress dress, String replaces, Instant at) {
        DocumentLines lines = DocumentLines.of(draft.text());
        Map<String, String> setting = new TreeMap<>(draft.choices());
        setting.put(PAGE, word(page));
        setting.put(DRESS, word(dress));
        return new IssuedPaper(
                id,
                draft.text().kind(),
                "",
                word(page),
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
                setting,
                lines.words(),
                1,
                replaces);
    }

    private static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static <E extends Enum<E>> E kept(E[] all, IssuedPaper paper, String choice) {
        String word = paper.setting().getOrDefault(choice, "");
        return Stream.of(all)
                .filter(each -> word(each).equals(word))
                .findFirst()
                .orElseThrow(() ->
                        Refusal.of("document.refused.choice", "paper", paper.id(), "choice", choice, "kept", word));
    }
}
