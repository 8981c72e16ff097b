package tenterbook.piece.condition;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * A point or a rectangle on a photograph, as fractions of the upright picture's width and height, each 0 to 1 from the upper
 * left.
 *
 * @param photo digest of the original file
 * @param right null, with {@code bottom}, for a point
 */
public record PhotoMark(
        Digest photo,
        double left,
        double top,
        @Nullable Double right,
        @Nullable Double bottom) {
    private static final String NUMBER = "(\\d{1,3}(?:\\.\\d{1,6})?)\\s*%?";
    private static final String PLACE = NUMBER + "\\s*[,; ]\\s*" + NUMBER;
    private static final Pattern WRITTEN = Pattern.compile(PLACE + "(?:\\s*[;,]?(?:\\s+|\\s*to\\s+)" + PLACE + ")?");
    private static final int LONGEST = 100;

    /** @throws IllegalArgumentException if a part lies outside the picture, or a corner has one coordinate only */
    public PhotoMark {
        if (photo == null) {
            throw Refusal.of("condition.mark-without-file");
        }
        if ((right == null) != (bottom == null)) {
            throw Refusal.of("condition.area-half");
        }
        boolean within = inside(left) && inside(top) && (right == null || inside(right) && inside(bottom));
        if (!within) {
            throw new Refusal(
                    right == null
                            ? Message.of("condition.point-outside", "left", part(left), "top", part(top))
                            : Message.of(
                                    "condition.area-outside",
                                    "left",
                                    part(left),
                                    "top",
                                    part(top),
                                    "right",
                                    part(right),
                                    "bottom",
                                    part(bottom)));
        }
        if (right != null && (right < left || bottom < top)) {
            throw Refusal.of(
                    "condition.area-backwards",
                    "left",
                    part(left),
                    "top",
                    part(top),
                    "right",
                    part(right),
                    "bottom",
                    part(bottom));
        }
    }

    private static Written part(double fraction) {
        return NumberWords.plain(fraction);
    }

    private static boolean inside(double part) {
        return part >= 0 && part <= 1;
    }

    public static PhotoMark point(Digest photo, double left, double top) {
        return new PhotoMark(photo, left, top, null, null);
    }

    /**
     * Reads '42,31', '42.5 % 31 %' or '40,30 55,44': percent across and down, for a point or two opposite corners.
     *
     * @throws IllegalArgumentException with a sentence for the person who typed it
     */
    public static PhotoMark read(Digest photo, String text) {
        String entered = text == null ? "" : text.strip();
        Matcher written = WRITTEN.matcher(entered.length() > LONGEST ? "" : entered);
        if (!written.matches()) {
            throw refusal(entered);
        }
        double across = fraction(written.group(1), entered);
        double down = fraction(written.group(2), entered);
        if (written.group(3) == null) {
            return point(photo, across, down);
        }
        double toAcross = fraction(written.group(3), entered);
        double toDown = fraction(written.group(4), entered);
        return new PhotoMark(
                photo,
                Math.min(across, toAcross),
                Math.min(down, toDown),
                Math.max(across, toAcross),
                Math.max(down, toDown));
    }

    private static double fraction(String percent, String entered) {
        BigDecimal value = new BigDecimal(percent).movePointLeft(2);
        if (value.compareTo(BigDecimal.ONE) > 0) {
            throw refusal(entered);
        }
        return value.doubleValue();
    }

    private static IllegalArgumentException refusal(String entered) {
        String brief = entered.length() > LONGEST ? entered.substring(0, LONGEST) + "…" : entered;
        return Refusal.of("condition.mark-unreadable", "entered", brief);
    }

    public boolean area() {
        return right != null;
    }

    /** As {@link #read} takes it, as in '42,31' or '40,30 55,44'. */
    public String percent() {
        return written(left) + "," + written(top) + (area() ? " " + written(right) + "," + written(bottom) : "");
    }

    /** As in '42 % across, 31 % down'. */
    public Written inWords() {
        return area()
                ? Message.of(
                        "condition.area",
                        "across",
                        NumberWords.percents(left, right, 0),
                        "down",
                        NumberWords.percents(top, bottom, 0))
                : Message.of(
                        "condition.point", "across", NumberWords.percent(left, 0), "down", NumberWords.percent(top, 0));
    }

    private static String written(double fraction) {
        BigDecimal percent = BigDecimal.valueOf(fraction)
                .movePointRight(2)
                .setScale(4, java.math.RoundingMode.HALF_UP)
                .stripTrailingZeros();
        return percent.scale() < 0 ? percent.setScale(0).toPlainString() : percent.toPlainString();
    }
}
