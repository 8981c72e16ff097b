package tenterbook.search.query;

import java.math.BigDecimal;
import tenterbook.words.Refusal;

/**
 * A range of numbers, both ends included.
 *
 * @param from 0 or more, or null for no lower end
 * @param to not below {@code from}, or null for no upper end
 */
public record Span(Double from, Double to) {
    /** @throws IllegalArgumentException if an end is negative or not finite, both are missing, or they are swapped */
    public Span {
        if (from == null && to == null) {
            throw Refusal.of("search.range.no-end");
        }
        if (from != null && !(from >= 0 && from < 1e12) || to != null && !(to >= 0 && to < 1e12)) {
            throw Refusal.of("search.range.negative");
        }
        if (from != null && to != null && from > to) {
            throw Refusal.of("search.range.backwards");
        }
        from = from == null ? null : from + 0.0;
        to = to == null ? null : to + 0.0;
    }

    /**
     * Reads {@code 4..8}, {@code 4..}, {@code ..8} or {@code 6}.
     *
     * @throws IllegalArgumentException with the reason, for a message of the caller
     */
    public static Span read(String text) {
        String[] ends = ends(text);
        return new Span(number(ends[0]), number(ends[1]));
    }

    /** The two ends of {@code a..b}, blank where missing; a lone value is both ends. */
    static String[] ends(String text) {
        String plain = text.strip().replace("…", "..");
        int dots = plain.indexOf("..");
        return dots < 0
                ? new String[] {plain, plain}
                : new String[] {
                    plain.substring(0, dots).strip(), plain.substring(dots + 2).strip()
                };
    }

    private static Double number(String text) {
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("\\d{1,12}([.]\\d{1,6})?")) {
            throw Refusal.of("search.not-a-number", "found", text);
        }
        return Double.valueOf(text);
    }

    /** Whether a value known to lie from {@code low} to {@code high} can lie in this range; NaN never does. */
    public boolean overlaps(double low, double high) {
        return (from == null ? low == low : high >= from) && (to == null ? high == high : low <= to);
    }

    /** As {@link #read} takes it. */
    @Override
    public String toString() {
        if (from != null && from.equals(to)) {
            return plain(from);
        }
        return (from == null ? "" : plain(from)) + ".." + (to == null ? "" : plain(to));
    }

    static String plain(double value) {
        BigDecimal decimal = BigDecimal.valueOf(value);
        return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
    }
}
