package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Facts in the words that several documents share. */
final class DocumentWords {
    private DocumentWords() {}

    static String notRecorded() {
        return words("measure.not-recorded");
    }

    /** @param key of the fact's name */
    static Block.Fact fact(String key, Object value) {
        return fact(Message.of(key), value);
    }

    static Block.Fact fact(Message label, Object value) {
        return named(label.onPaper(), value);
    }

    /** A fact under a name that the maker entered. */
    static Block.Fact named(String label, Object value) {
        String text = (value instanceof Written written ? written.onPaper() : Objects.toString(value, "")).strip();
        return new Block.Fact(label, text.isEmpty() ? notRecorded() : text);
    }

    static Block.Heading heading(int level, String key) {
        return new Block.Heading(level, words(key));
    }

    static Block.Column column(String key, double share) {
        return new Block.Column(words(key), share, false);
    }

    static Block.Column numberColumn(String key, double share) {
        return new Block.Column(words(key), share, true);
    }

    static Block.Blank blank(String key, int lines) {
        return new Block.Blank(words(key), lines);
    }

    /** In the language of the paper. */
    static String words(String key) {
        return Message.of(key).onPaper();
    }

    static String yes(boolean holds) {
        return holds ? "yes" : "no";
    }

    /** The word of a choice; empty for null. */
    static String choice(@Nullable Written word) {
        return word == null ? "" : word.onPaper();
    }

    static Block.Note missing(String text) {
        return new Block.Note(Block.Manner.MISSING, text);
    }

    static Block.Note caution(String text) {
        return new Block.Note(Block.Manner.CAUTION, text);
    }

    static Block.Note note(String text) {
        return new Block.Note(Block.Manner.NOTE, text);
    }

    static String joined(String between, String... texts) {
        return Stream.of(texts).filter(text -> text != null && !text.isBlank()).collect(Collectors.joining(between));
    }

    /** One document of all these pieces. */
    static DocumentText list(List<DocumentFacts> subject, DocumentSettings request, List<Block> blocks) {
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                request.kind().onPaper(),
                subject.size() == 1 ? subject.get(0).running() : pieces(subject.size()),
                subject.get(0).house(),
                List.of(new DocumentText.DocumentSection(null, blocks)));
    }

    /** As in '3 pieces'. */
    static String pieces(int count) {
        return Message.of("document.pieces", "count", count).onPaper();
    }

    /** Paragraphs as typed, separated by line ends. */
    static List<Block> paragraphs(String typed) {
        List<Block> blocks = new ArrayList<>();
        Arrays.stream(typed.split("\\R+"))
                .filter(line -> !line.isBlank())
                .forEach(line -> blocks.add(new Block.Paragraph(line)));
        return blocks;
    }

    /** Both sides with the name of each, as entered and in metric units, or that one is not recorded. */
    static String size(Piece piece) {
        if (!piece.length().recorded() && !piece.width().recorded()) {
            return notRecorded();
        }
        return size(piece.length(), piece.width());
    }

    static String size(Quantity length, Quantity width) {
        return Message.of("document.size", "length", side(length), "width", side(width))
                .onPaper();
    }

    /** One measurement; where it was entered in other units, also in metric ones. */
    static String side(Quantity side) {
        if (!side.known()) {
            return side.recorded()
                    ? Message.of("document.no-measurement", "entered", side.entered())
                            .onPaper()
                    : notRecorded();
        }
        String entered = QuantityWords.entered(side);
        if (entered.matches(".*\\d\\s*$")) {
            entered = QuantityWords.value(side);
        }
        Optional<String> metric = QuantityWords.metric(side);
        String symbol = side.unit().symbol();
        boolean already = Set.of("mm", "cm", "m", "g", "kg").contains(symbol);
        return already || metric.isEmpty() ? entered.replace(" ", "\u00a0") : entered + " (" + metric.get() + ")";
    }
}
