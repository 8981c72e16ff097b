package tenterbook.exchange.sheet.file;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A number in a spreadsheet as the text that its format shows: a date, a percentage, an amount with its currency, or the number. */
final class CellNumber {
    private static final Pattern CURRENCY = Pattern.compile("\\[\\$([^\\]-]+)|([€£¥])|[\"\\\\](\\$)");
    private static final Pattern NOT_SHOWN = Pattern.compile("\"[^\"]*\"|\\\\.|\\[[^\\]]*\\]|_.");
    private static final Pattern DATE = Pattern.compile("(?i)y|d|mmm");

    /** Digits that a double holds; more are only its binary rest, as in 0.30000000000000004. */
    private static final MathContext DIGITS = new MathContext(15, RoundingMode.HALF_EVEN);

    private CellNumber() {}

    /**
     * @param format as in ECMA-376 part 1, 18.8.30; null for none
     * @param from1904 whether days are counted from 1 January 1904, not from 30 December 1899
     */
    static String text(BigDecimal number, @Nullable String format, boolean from1904) {
        if (format == null || format.equalsIgnoreCase("general")) {
            return plain(number);
        }
        String first = format.split(";", 2)[0];
        String shown = NOT_SHOWN.matcher(first).replaceAll("");
        if (DATE.matcher(shown).find()) {
            return date(number, from1904);
        }
        if (shown.endsWith("%")) {
            return plain(number.movePointRight(2)) + "%";
        }
        Matcher currency = CURRENCY.matcher(first);
        if (currency.find()) {
            String sign = currency.group().startsWith("[")
                    ? currency.group(1)
                    : currency.group().replaceAll("[\"\\\\]", "");
            return plain(number) + " " + sign.strip();
        }
        return plain(number);
    }

    static String plain(BigDecimal number) {
        BigDecimal rounded = number.round(DIGITS).stripTrailingZeros();
        return rounded.toPlainString();
    }

    /** ISO 8601; the time is left out at midnight. */
    private static String date(BigDecimal serial, boolean from1904) {
        if (serial.abs().compareTo(BigDecimal.valueOf(3_000_000)) > 0) {
            return plain(serial);
        }
        LocalDate origin = from1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
        long day = serial.setScale(0, RoundingMode.FLOOR).longValueExact();
        long seconds = serial.subtract(BigDecimal.valueOf(day))
                .multiply(BigDecimal.valueOf(86_400))
                .setScale(0, RoundingMode.HALF_UP)
                .longValue();
        LocalDateTime at = origin.plusDays(day).atStartOfDay().plusSeconds(seconds);
        return seconds == 0 ? at.toLocalDate().toString() : at.toString();
    }
}
