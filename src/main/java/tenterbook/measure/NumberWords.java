package tenterbook.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tenterbook.words.Conventions;
import tenterbook.words.Written;

/**
 * Numbers as people read them: the reader's decimal mark, no grouping marks, an en dash between the ends of a range, and a
 * space before the percent sign (ISO 80000-1:2022, 6.5 and 7.3.2; SI Brochure, 9th edition, 5.4.7; from memory). Contents on labels
 * alone follow the law of their market instead, as {@code label/*.json} states it.
 */
public final class NumberWords {
    private NumberWords() {}

    /** No-break space between a number and its unit. */
    public static final String UNIT_SPACE = "\u00a0";

    private record Digits(BigDecimal value) implements Written {
        @Override
        public String in(Conventions conventions) {
            return value.toPlainString().replace('.', conventions.decimalMark());
        }
    }

    /** NaN or an infinity, as Java names it, for an error message. */
    private record NoNumber(double value) implements Written {
        @Override
        public String in(Conventions conventions) {
            return String.valueOf(value);
        }
    }

    private record Range(Written low, Written high) implements Written {
        @Override
        public String in(Conventions conventions) {
            return low.in(conventions) + "–" + high.in(conventions);
        }
    }

    private record Percent(Written number) implements Written {
        @Override
        public String in(Conventions conventions) {
            return number.in(conventions) + UNIT_SPACE + Unit.PERCENT.symbol();
        }
    }

    /** With this many decimals, halves away from zero; a number that rounds to zero has no sign. */
    public static Written decimals(double value, int decimals) {
        return Double.isFinite(value)
                ? new Digits(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP))
                : new NoNumber(value);
    }

    /** With its own decimals. */
    static Written decimals(BigDecimal value) {
        return new Digits(value);
    }

    /** Exactly, without zeros at the end and without an exponent. */
    public static Written plain(double value) {
        return Double.isFinite(value) ? plain(BigDecimal.valueOf(value)) : new NoNumber(value);
    }

    public static Written plain(BigDecimal value) {
        return new Digits(value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros());
    }

    /** Three significant digits at least, whole numbers whole. */
    public static Written rounded(double value) {
        return plain(QuantityWords.rounded(value));
    }

    /** '6–8'. */
    public static Written range(Written low, Written high) {
        return new Range(low, high);
    }

    /** '44 %', of a number that is in percent. */
    public static Written percent(Written number) {
        return new Percent(number);
    }

    /** '44 %'. */
    public static Written percent(double fraction, int decimals) {
        return new Percent(decimals(fraction * 100, decimals));
    }

    /** '40–60 %'. */
    public static Written percents(double low, double high, int decimals) {
        return new Percent(range(decimals(low * 100, decimals), decimals(high * 100, decimals)));
    }
}
