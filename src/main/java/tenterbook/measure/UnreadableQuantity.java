package tenterbook.measure;

import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A text that is not a quantity; the message is for the person who typed it. */
public final class UnreadableQuantity extends Refusal {
    private static final long serialVersionUID = 1L;

    UnreadableQuantity(String text, Unit usual, Message why) {
        super(Message.of(
                "measure.quantity.unreadable", "entered", text.strip(), "why", why, "examples", examples(usual)));
    }

    private static Message examples(Unit usual) {
        return switch (usual.dimension()) {
            case RATIO -> Message.of("measure.quantity.examples-ratio");
            case ACIDITY -> Message.of("measure.quantity.examples-ph");
            case LENGTH ->
                usual == Unit.MILLIMETRE
                        ? Message.of("measure.quantity.examples-mm")
                        : Message.of("measure.quantity.examples-length");
            default -> {
                String unit = usual.symbol().isEmpty() ? "" : " " + usual.symbol();
                yield Message.of("measure.quantity.examples", "unit", unit);
            }
        };
    }
}
