package tenterbook.colour.space;

import java.util.List;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;

/**
 * A plain name for a colour, from its lightness, chroma and hue angle: "deep blue", "warm brown", "off-white".
 *
 * <p>Our own scheme for naturally dyed cloth, whose chroma seldom exceeds 60. A reading aid and no standard: two colours with
 * one name may differ visibly.
 */
public final class ColourWords {
    /** Hue families by CIELAB hue angle; the limits are ours. From 350° to 16° it is crimson again. */
    private static final List<Double> LIMITS = Threshold.numbers("colour-names");

    private static final List<Double> DEPTHS = Threshold.numbers("colour-depth");

    private static final List<String> FAMILIES = List.of(
            "crimson",
            "red",
            "orange-red",
            "orange",
            "golden-yellow",
            "yellow",
            "yellow-green",
            "green",
            "blue-green",
            "turquoise",
            "blue",
            "violet-blue",
            "purple",
            "red-purple");

    private ColourWords() {}

    /** The name in the language of the paper that is composed, English elsewhere: lower case, one to three words. */
    public static String of(Lab colour) {
        return name(colour).onPaper();
    }

    /** The name in any language. */
    public static Message name(Lab colour) {
        return Message.of("colour.name." + code(colour));
    }

    private static String code(Lab colour) {
        return code(colour.lightness(), colour.chroma(), colour.hueDegrees());
    }

    /**
     * All limits between names are whole numbers of L*, C* and degrees, of which {@link ColourRegion} makes use.
     *
     * @param h in degrees, 0 to less than 360
     */
    static String code(double L, double C, double h) {
        if (L < 12 || L < 20 && C < 8) {
            return "near-black";
        }
        if (L >= 85 && C < 12) {
            return L >= 96 && C < 3 ? "white" : "off-white";
        }
        if (C < 5) {
            return depth(L, "dark-", "", "light-", "pale-") + "grey";
        }
        String earth = earth(L, C, h);
        if (!earth.isEmpty()) {
            return earth;
        }
        boolean rosy = h >= 335 || h < 40;
        if (rosy && L >= 62) {
            return (L >= 80 ? "pale-" : C >= 45 ? "strong-" : "") + "pink";
        }
        if (C < 12) {
            return depth(L, "dark-", "", "light-", "pale-") + "grey-" + family(h);
        }
        String strength = C >= 55 && L >= 35 ? "vivid-" : "";
        return (strength.isEmpty() ? depth(L, "deep-", "", "light-", "pale-") : strength) + family(h);
    }

    /** Browns, beiges and olives, which are dull orange and yellow hues; else empty. */
    private static String earth(double L, double C, double h) {
        if (h < 20 || h >= 122) {
            return "";
        }
        if (h < 45) {
            return C < 32 && L < 62 ? (C < 12 ? depth(L, "dark-", "", "light-", "") + "grey-brown" : redBrown(L)) : "";
        }
        if (L >= 68) {
            return C < 24 && h < 100 ? (L >= 80 ? "pale-" : "") + "beige" : "";
        }
        if (h >= 90) {
            return C < 45 && L < 60 ? depth(L, "dark-", "", "", "") + (C < 12 ? "olive-grey" : "olive") : "";
        }
        if (C < 14) {
            return depth(L, "dark-", "", "light-", "") + "grey-brown";
        }
        if (C < 45 && L < 62) {
            String warmth = C >= 24 && h < 62 ? "warm-" : "";
            String depth = depth(L, "dark-", "", "light-", "");
            return (depth.isEmpty() ? warmth : depth) + "brown";
        }
        return "";
    }

    private static String redBrown(double L) {
        return depth(L, "dark-", "", "light-", "") + "red-brown";
    }

    private static String depth(double L, String dark, String middle, String light, String pale) {
        if (L < DEPTHS.get(0)) {
            return dark;
        }
        if (L < DEPTHS.get(1)) {
            return middle;
        }
        return L < DEPTHS.get(2) ? light : pale;
    }

    private static String family(double h) {
        for (int i = 0; i < FAMILIES.size(); i++) {
            if (h < LIMITS.get(i)) {
                return FAMILIES.get(i);
            }
        }
        return FAMILIES.get(0);
    }
}
