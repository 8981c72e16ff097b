package tenterbook.measure;

/** A text that is no quantity; the message is a sentence for the person who typed it. */
public final class UnreadableQuantity extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    UnreadableQuantity(String text, Unit usual, String why) {
        super("“%s” was not understood: %s. Expected something like %s.".formatted(text.strip(), why, example(usual)));
    }

    private static String example(Unit usual) {
        String unit = usual.symbol().isEmpty() || usual == Unit.PH || usual == Unit.RATIO ? "" : " " + usual.symbol();
        return switch (usual.dimension()) {
            case RATIO -> "‘30’, ‘20 to 40’ or ‘forgot’";
            case ACIDITY -> "‘10.8’, ‘10 to 11’ or ‘forgot’";
            case LENGTH ->
                usual == Unit.MILLIMETRE
                        ? "‘8 mm’, ‘3 to 5 mm’, ‘about 1/4 in’ or ‘forgot’"
                        : "‘180 cm’, ‘1 1/2 yd’, ‘about 60 in’ or ‘forgot’";
            default -> "‘6%s’, ‘6 to 8%s’, ‘about 40%s’ or ‘forgot’".formatted(unit, unit, unit);
        };
    }
}
