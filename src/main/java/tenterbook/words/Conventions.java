package tenterbook.words;

import java.time.ZoneId;
import java.util.Locale;

/**
 * How words, numbers and times are written for one reader.
 *
 * @param language of the message bundles; where a bundle has no such language, English is written
 * @param decimalMark '.' or ','
 * @param dateOrder the order of a date written in words
 * @param zone in which instants are shown
 */
public record Conventions(Locale language, char decimalMark, DateOrder dateOrder, ZoneId zone) {
    /** As in '14 March 2024', 'March 14, 2024' and '2024-03-14'. */
    public enum DateOrder {
        DAY_FIRST,
        MONTH_FIRST,
        YEAR_FIRST
    }

    public Conventions {
        if (decimalMark != '.' && decimalMark != ',') {
            throw new IllegalStateException("A decimal mark is '.' or ','; found '" + decimalMark + "'");
        }
    }

    /** The same reader's order of dates and time zone, with the words and the decimal mark of a language. */
    public Conventions in(Language other) {
        return new Conventions(other.locale(), other.decimalMark(), dateOrder, zone);
    }

    /** British English, decimal point, day first, in the time zone of this computer. */
    public static Conventions english() {
        return new Conventions(Locale.UK, '.', DateOrder.DAY_FIRST, ZoneId.systemDefault());
    }
}
