package tenterbook.labelling;

import java.util.Optional;
import java.util.function.Function;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Piece;
import tenterbook.words.Message;

/** Length and width of a piece in one line, in both systems, the market's own first. */
final class SizeWords {
    private SizeWords() {}

    /** Empty where neither side is known. */
    static Optional<String> of(Piece piece, Market market) {
        if (!piece.length().known() && !piece.width().known()) {
            return Optional.empty();
        }
        if (!piece.length().known() || !piece.width().known()) {
            Message words = piece.length().known()
                    ? Message.of("label.length-alone", "length", QuantityWords.value(piece.length()))
                    : Message.of("label.width-alone", "width", QuantityWords.value(piece.width()));
            return Optional.of(words.inEnglish());
        }
        Optional<String> metric = pair(piece, QuantityWords::metric);
        Optional<String> us = pair(piece, QuantityWords::us);
        if (metric.isEmpty() || us.isEmpty()) {
            return Optional.of(QuantityWords.entered(piece.length()) + " × " + QuantityWords.entered(piece.width()));
        }
        return Optional.of(
                market == Market.US ? us.get() + " (" + metric.get() + ")" : metric.get() + " (" + us.get() + ")");
    }

    private static Optional<String> pair(Piece piece, Function<Quantity, Optional<String>> system) {
        return system.apply(piece.length())
                .flatMap(l -> system.apply(piece.width()).map(w -> {
                    int unit = l.lastIndexOf('\u00a0');
                    boolean alike = unit > 0 && w.endsWith(l.substring(unit));
                    return (alike ? l.substring(0, unit) : l) + "\u00a0×\u00a0" + w;
                }));
    }
}
