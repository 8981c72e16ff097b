package tenterbook.label.document;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.archive.Archive;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.label.document.set.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/** Issues documents: prints them and keeps their exact words in the ledger, both or neither; and prints them again. */
public final class IssueDocument {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);
    private static final String PAGE = "page";
    private static final String DRESS = "dress";

    private IssueDocument() {}

    /**
     * On what and for whom a document is printed.
     *
     * @param choices of the person who printed, by name, kept with the paper
     * @param replaces the paper it is printed in place of; empty for none
     */
    public record Order(PageSize page, Dress dress, Map<String, String> choices, String replaces) {
        public Order {
            choices = choices == null ? Map.of() : Map.copyOf(choices);
            replaces = replaces == null ? "" : replaces;
        }
    }

    /**
     * Writes the PDF to {@code out} and the paper to the ledger.
     *
     * @param pieces all that the document speaks of, each in the version it was composed from
     * @param out should be memory: what it got is worth nothing until this returns
     * @throws tenterbook.label.layout.DoesNotFit where words have no room; nothing is kept
     * @throws tenterbook.label.layout.CannotBeSet where a character cannot be set; nothing is kept
     */
    public static IssuedPaper print(
            Archive archive,
            DocumentText text,
            List<Saved<Piece>> pieces,
            Order order,
            Photographs photographs,
            OutputStream out,
            Clock clock,
            String author)
            throws IOException {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        IssuedPaper paper = paper(text, pieces, order, at);
        again(paper, photographs, out);
        archive.ledger().write(author, act -> act.create(Kinds.ISSUED_PAPER, paper));
        return paper;
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
            throw new IllegalArgumentException(
                    "The paper %s keeps no document that could be laid out again".formatted(paper.id()));
        }
        DocumentText text = DocumentLines.read(paper);
        DocumentPaper.pdf(
                text,
                PageSize.valueOf(constant(paper.setting().get(PAGE))),
                Dress.valueOf(constant(paper.setting().get(DRESS))),
                photographs,
                out,
                Clock.fixed(paper.issuedAt(), ZoneOffset.UTC));
        return text;
    }

    private static IssuedPaper paper(DocumentText text, List<Saved<Piece>> pieces, Order order, Instant at) {
        DocumentLines lines = DocumentLines.of(text);
        Map<String, String> setting = new TreeMap<>(order.choices);
        setting.put(PAGE, word(order.page));
        setting.put(DRESS, word(order.dress));
        return new IssuedPaper(
                "paper-" + STAMP.format(at),
                text.kind(),
                "",
                word(order.page),
                text.template(),
                List.of(),
                at,
                pieces.stream()
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
                order.replaces);
    }

    private static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }
}
