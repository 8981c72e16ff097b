package tenterbook.piece;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Layer addresses: which layers of a folded stack a piece is.
 *
 * @param entered the text as typed
 * @param layers layer numbers from 1 at the first board, rising; empty where all or unknown
 * @param all whether the piece is the whole stack
 */
public record Layers(String entered, List<Integer> layers, boolean all) {
    public static final Layers UNRECORDED = new Layers("", List.of(), false);

    public Layers {
        entered = entered == null ? "" : entered;
        layers = layers == null ? List.of() : List.copyOf(layers);
    }

    /**
     * Reads 'all', '3', '1-8', '1 to 4, 7' or 'forgot'.
     *
     * @throws IllegalArgumentException with a sentence for the person who typed it
     */
    public static Layers read(String text) {
        if (text == null || text.isBlank()) {
            return UNRECORDED;
        }
        String plain = text.strip().toLowerCase(Locale.ROOT).replace('–', '-').replaceAll("\\s*(to|-)\\s*", "-");
        if (plain.matches("all|whole|every layer|the whole stack")) {
            return new Layers(text.strip(), List.of(), true);
        }
        if (plain.matches("forgot(ten)?|unknown|\\?|don't know")) {
            return new Layers(text.strip(), List.of(), false);
        }
        List<Integer> found = new ArrayList<>();
        for (String part : plain.replaceAll("layers?", "").strip().split("\\s*(,|;|\\band\\b|\\s)\\s*")) {
            String[] ends = part.split("-");
            if (!part.matches("\\d{1,4}(-\\d{1,4})?") || Integer.parseInt(ends[0]) < 1) {
                throw new IllegalArgumentException(
                        "“%s” was not understood as layers. Expected something like ‘all’, ‘3’, ‘1-8’, ‘1-4, 7’ or ‘forgot’."
                                .formatted(text.strip()));
            }
            for (int i = Integer.parseInt(ends[0]); i <= Integer.parseInt(ends[ends.length - 1]); i++) {
                found.add(i);
            }
        }
        return new Layers(text.strip(), found.stream().distinct().sorted().toList(), false);
    }

    @Override
    public String toString() {
        return entered.isBlank() ? "not recorded" : entered;
    }
}
