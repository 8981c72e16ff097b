package tenterbook.colour.space;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers for reading: rounded half up, and never a minus before zero. */
public final class Decimals {
    private Decimals() {}

    /** {@code 34.0}, {@code -2.1}, {@code 0.0}. */
    public static String plain(double value, int decimals) {
        return rounded(value, decimals).toPlainString();
    }

    /** With its sign, except zero: {@code +3.2}, {@code -0.4}, {@code 0.0}. */
    public static String signed(double value, int decimals) {
        BigDecimal rounded = rounded(value, decimals);
        return (rounded.signum() > 0 ? "+" : "") + rounded.toPlainString();
    }

    private static BigDecimal rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    }
}
