package tenterbook.documents;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Refusal;

/**
 * The words of a document, exactly as printed, in order. Stored when it is issued, so that it can be laid out again without
 * reading the records.
 *
 * @param kind code, as in {@code loan-schedule}
 * @param template name and version of its words, as in {@code loan-schedule 1}
 * @param title at its head and in its outline, as in 'Loan schedule'
 * @param running shown at the head of further pages, as in 'V24-003 Noite de figos'; may be empty
 * @param maker shown at the foot, as in 'Oficina Valderim, Porto Sarelho'; may be empty
 * @param parts in order
 */
public record DocumentText(
        String kind, String template, String title, String running, String maker, List<DocumentSection> parts) {
    /**
     * A stretch of blocks.
     *
     * @param piece the only piece it is about; null where it is about several or none
     */
    public record DocumentSection(PieceNumber piece, List<Block> blocks) {
        public DocumentSection {
            blocks = List.copyOf(blocks);
        }
    }

    public DocumentText {
        Objects.requireNonNull(kind, "A document names its kind");
        template = Objects.requireNonNullElse(template, "");
        title = Objects.requireNonNullElse(title, "").strip();
        running = Objects.requireNonNullElse(running, "").strip();
        maker = Objects.requireNonNullElse(maker, "").strip();
        parts = List.copyOf(parts);
        Set<PieceNumber> subject = new HashSet<>();
        for (DocumentSection part : parts) {
            if (part.piece != null && !subject.add(part.piece)) {
                throw Refusal.of("document.refused.two-parts", "piece", part.piece);
            }
        }
    }

    /** Every text that is printed, in order, for reading on a page. */
    public List<String> words() {
        return DocumentLines.of(this).all().stream()
                .filter(line -> !line.part().equals("instead"))
                .map(line -> line.text())
                .filter(text -> !text.isEmpty())
                .toList();
    }
}
