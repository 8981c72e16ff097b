package tenterbook.label.document.kind;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.label.document.Block;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;

/** Facts in the words that several documents share. */
final class Say {
    static final String NOT_RECORDED = "not recorded";

    private Say() {}

    static Block.Fact fact(String label, Object value) {
        String text = value == null ? "" : value.toString().strip();
        return new Block.Fact(label, text.isEmpty() ? NOT_RECORDED : text);
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

    static String number(double value) {
        return QuantityWords.number(value);
    }

    static String joined(String between, String... texts) {
        return Stream.of(texts).filter(text -> text != null && !text.isBlank()).collect(Collectors.joining(between));
    }

    static String capital(String text) {
        int first = text.isEmpty() ? 0 : text.offsetByCodePoints(0, 1);
        return text.substring(0, first).toUpperCase(Locale.ROOT) + text.substring(first);
    }

    /** Paragraphs as typed: an empty line parts them, a single line end too. */
    static List<Block> paragraphs(String typed) {
        List<Block> blocks = new ArrayList<>();
        Arrays.stream(typed.split("\\R+"))
                .filter(line -> !line.isBlank())
                .forEach(line -> blocks.add(new Block.Paragraph(line)));
        return blocks;
    }

    /** Both sides with the name of each, as entered and in metric units; says which is not recorded. */
    static String size(Piece piece) {
        if (!piece.length().recorded() && !piece.width().recorded()) {
            return NOT_RECORDED;
        }
        return "length " + side(piece.length()) + ", width " + side(piece.width());
    }

    /** One measurement; where it was entered in other units, also in metric ones. */
    static String side(Quantity side) {
        if (!side.known()) {
            return side.recorded() ? "“" + side.entered() + "”, no measurement" : NOT_RECORDED;
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

    static String fault(Fault fault) {
        return joined(", ", fault.kind(), fault.where()) + (fault.note().isEmpty() ? "" : ": " + fault.note());
    }

    /** Faults and the newest examination; where neither is recorded that is said, and is no finding of soundness. */
    static String condition(Piece piece) {
        String faults = piece.faults().stream().map(Say::fault).collect(Collectors.joining("; "));
        String examined = piece.events().stream()
                .filter(event -> event.kind() == EventKind.EXAMINED)
                .reduce((first, second) -> second)
                .map(event -> "Examined " + event.when() + (event.note().isEmpty() ? "." : ": " + stop(event.note())))
                .orElse("");
        if (faults.isEmpty() && examined.isEmpty()) {
            return "no fault and no examination is recorded; examine it before it leaves";
        }
        return joined(" ", faults.isEmpty() ? "No fault is recorded." : stop(capital(faults)), examined);
    }

    static String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK).format(day);
    }

    static String stop(String text) {
        return text.isEmpty() || text.matches("(?s).*[.!?…]$") ? text : text + ".";
    }

    /** What was agreed last for an event of this kind; the asking price said to be one; or 'not recorded'. */
    static String agreed(Piece piece, EventKind kind) {
        Optional<Event> event = piece.events().stream()
                .filter(each -> each.kind() == kind && each.price() != null)
                .reduce((first, second) -> second);
        if (event.isPresent()) {
            return event.get().price().toString();
        }
        return piece.price() == null ? NOT_RECORDED : piece.price() + " asked; nothing agreed is recorded";
    }

    static String maker(Studio studio) {
        return joined(", ", studio.name(), studio.place());
    }
}
