package tenterbook.colour.target;

import java.util.Objects;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A card whose colour is known.
 *
 * @param name as a person calls it
 * @param lab CIELAB, D65, 2° observer
 */
public record KnownCard(String name, Lab lab) {
    /** @throws IllegalArgumentException if its reflectance is 0 or more than 1 */
    public KnownCard {
        Objects.requireNonNull(name, "name");
        if (!(lab.lightness() > 0 && lab.lightness() <= 100)) {
            throw Refusal.of("card.lightness", "card", name, "found", NumberWords.plain(lab.lightness()));
        }
    }

    /** The photographer's grey card of 18 % reflectance (common practice; a real card may be off by a few percent). */
    public static KnownCard grey18() {
        return neutral(Message.of("card.grey-18").inEnglish(), 0.18);
    }

    /**
     * A card without hue.
     *
     * @param y its reflectance (CIE Y), above 0 to 1
     */
    public static KnownCard neutral(String name, double y) {
        if (!(y > 0 && y <= 1)) {
            throw Refusal.of("card.reflectance", "card", name, "found", NumberWords.plain(y));
        }
        double[] white = WhitePoint.D65.xyz();
        return new KnownCard(name, WhitePoint.D65.lab(new double[] {y * white[0], y, y * white[2]}));
    }
}
