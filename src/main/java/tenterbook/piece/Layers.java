package tenterbook.piece;

import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PortugueseText;
import tenterbook.recipe.LayerMap;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * Layer addresses: which layers of a folded stack a piece is.
 *
 * @param entered the text as typed
 * @param layers layer numbers from 1 at the first board, rising; empty where all or unknown
 * @param all whether the piece is the whole stack
 */
public record Layers(String entered, List<Integer> layers, boolean all) implements Written {
    private static final int LONGEST = 200;

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
    public static Layers read(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return UNRECORDED;
        }
        String entered = text.strip();
        if (entered.length() > LONGEST) {
            throw refusal(entered.substring(0, LONGEST) + "…");
        }
        String plain = PortugueseText.english(
                        entered.toLowerCase(Locale.ROOT).replace('–', '-').replaceAll("[\\s\\p{Z}]+", " "))
                .replaceAll(" ?(to|-) ?", "-");
        if (plain.matches("all|whole|every layer|the whole stack")) {
            return new Layers(entered, List.of(), true);
        }
        if (plain.matches("forgot(ten)?|unknown|\\?|don't know")) {
            return new Layers(entered, List.of(), false);
        }
        TreeSet<Integer> found = new TreeSet<>();
        for (String part : plain.replaceAll("layers?", "").strip().split(" ?[,;] ?| and | ", -1)) {
            if (!part.matches("\\d{1,4}(-\\d{1,4})?")) {
                throw refusal(entered);
            }
            String[] ends = part.split("-");
            int first = Integer.parseInt(ends[0]);
            int last = Integer.parseInt(ends[ends.length - 1]);
            if (first < 1 || last < first || last > LayerMap.MOST_LAYERS) {
                throw refusal(entered);
            }
            for (int layer = first; layer <= last; layer++) {
                found.add(layer);
            }
        }
        return new Layers(entered, List.copyOf(found), false);
    }

    private static IllegalArgumentException refusal(String entered) {
        return Refusal.of("piece.layers-unreadable", "entered", entered, "most", LayerMap.MOST_LAYERS);
    }

    /** As entered; 'not recorded' where nothing was. */
    @Override
    public String in(Conventions conventions) {
        return entered.isBlank() ? Message.of("measure.not-recorded").in(conventions) : entered;
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
