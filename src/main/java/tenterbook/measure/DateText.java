package tenterbook.measure;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Reads a date as people write it: '2024-03-05', '5 March 2024', 'March 2024', 'spring 2021', '2019', 'about 2019',
 * '1990s', '2019 to 2021', 'before 2020', 'forgot'. Seasons are those of the northern half of the year by months
 * (spring: March to May).
 */
public final class DateText {
    private static final List<String> MONTHS = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");
    private static final Set<String> SAID_UNKNOWN =
            Set.of("forgot", "forgotten", "unknown", "?", "don't know", "dont know", "no idea", "not known", "-");
    private static final Pattern ABOUT =
            Pattern.compile("^(about|circa|ca\\.?|c\\.|around|approximately|maybe|perhaps|~)\\s*");

    private static final int LONGEST = 100;

    private DateText() {}

    /**
     * @return {@link PartialDate#UNRECORDED} for null or blank text
     * @throws Refusal with a sentence for the person who typed it
     */
    public static PartialDate read(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return PartialDate.UNRECORDED;
        }
        String entered = text.strip();
        if (entered.length() > LONGEST) {
            throw refusal(entered.substring(0, LONGEST) + "…", Message.of("measure.date.too-long"));
        }
        String plain = entered.toLowerCase(Locale.ROOT)
                .replace('–', '-')
                .replaceAll("[\\s\\p{Z}]+", " ")
                .strip();
        plain = PortugueseText.english(plain);
        if (SAID_UNKNOWN.contains(plain)) {
            return new PartialDate(entered, null, null, false);
        }
        Matcher saidAbout = ABOUT.matcher(plain);
        boolean about = saidAbout.find();
        plain = about ? plain.substring(saidAbout.end()) : plain;
        try {
            if (plain.startsWith("before ")) {
                LocalDate[] span = span(plain.substring(7), entered);
                return new PartialDate(entered, null, span[0].minusDays(1), about);
            }
            if (plain.startsWith("after ") || plain.startsWith("since ")) {
                LocalDate[] span = span(plain.substring(6), entered);
                return new PartialDate(entered, plain.startsWith("since") ? span[0] : span[1].plusDays(1), null, about);
            }
            Matcher range =
                    Pattern.compile("^(.+?)\\s*(?:\\bto\\b|/| - )\\s*(.+)$").matcher(plain);
            Matcher years = Pattern.compile("^(\\d{4})\\s*-\\s*(\\d{4})$").matcher(plain);
            Matcher either = years.matches() ? years : range;
            if (years.matches() || range.matches() && !plain.matches("\\d{1,2}/\\d{1,2}/\\d{4}")) {
                return new PartialDate(
                        entered, span(either.group(1), entered)[0], span(either.group(2), entered)[1], about);
            }
            LocalDate[] span = span(plain, entered);
            return new PartialDate(entered, span[0], span[1], about);
        } catch (DateTimeException e) {
            throw refusal(entered, Message.of("measure.date.no-such-day"));
        }
    }

    private static LocalDate[] span(String text, String entered) {
        String plain = text.strip();
        if (plain.matches("\\d{4}-\\d{1,2}-\\d{1,2}")) {
            String[] part = plain.split("-");
            return day(part[0], part[1], part[2]);
        }
        if (plain.matches("\\d{4}-\\d{1,2}")) {
            String[] part = plain.split("-");
            return month(part[0], Integer.parseInt(part[1]));
        }
        if (plain.matches("\\d{4}")) {
            int year = Integer.parseInt(plain);
            return new LocalDate[] {LocalDate.of(year, 1, 1), LocalDate.of(year, 12, 31)};
        }
        if (plain.matches("(the )?\\d{3}0s")) {
            int year = Integer.parseInt(plain.replaceAll("\\D", ""));
            return new LocalDate[] {LocalDate.of(year, 1, 1), LocalDate.of(year + 9, 12, 31)};
        }
        if (plain.matches("\\d{1,2}[./]\\d{1,2}[./]\\d{4}")) {
            return numeric(plain.split("[./]"), plain.contains("."), entered);
        }
        Matcher words = Pattern.compile("^(?:(\\d{1,2})(?:st|nd|rd|th)?\\.? )?(?:of )?([a-z]+)\\.?,? (\\d{4})$")
                .matcher(plain);
        Matcher american = Pattern.compile("^([a-z]+)\\.? (\\d{1,2})(?:st|nd|rd|th)?,? (\\d{4})$")
                .matcher(plain);
        if (american.matches() && monthNumber(american.group(1)) > 0) {
            return day(american.group(3), "" + monthNumber(american.group(1)), american.group(2));
        }
        if (words.matches()) {
            int month = monthNumber(words.group(2));
            if (month > 0) {
                return words.group(1) == null
                        ? month(words.group(3), month)
                        : day(words.group(3), "" + month, words.group(1));
            }
            int year = Integer.parseInt(words.group(3));
            int first = switch (words.group(2)) {
                case "spring" -> 3;
                case "summer" -> 6;
                case "autumn", "fall" -> 9;
                case "winter" -> 12;
                default -> throw refusal(entered, Message.of("measure.date.no-month", "word", words.group(2)));
            };
            LocalDate from = LocalDate.of(year, first, 1);
            return new LocalDate[] {from, from.plusMonths(3).minusDays(1)};
        }
        throw Refusal.of("measure.date.unreadable", "entered", entered);
    }

    private static LocalDate[] numeric(String[] part, boolean dots, String entered) {
        int first = Integer.parseInt(part[0]);
        int second = Integer.parseInt(part[1]);
        if (!dots && first <= 12 && second <= 12 && first != second) {
            throw refusal(entered, Message.of("measure.date.two-readings"));
        }
        boolean monthFirst = !dots && second > 12;
        return monthFirst ? day(part[2], part[0], part[1]) : day(part[2], part[1], part[0]);
    }

    private static int monthNumber(String word) {
        for (int month = 1; word.length() >= 3 && month <= MONTHS.size(); month++) {
            if (MONTHS.get(month - 1).startsWith(word)) {
                return month;
            }
        }
        return 0;
    }

    private static LocalDate[] day(String year, String month, String day) {
        LocalDate date = LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day));
        return new LocalDate[] {date, date};
    }

    private static LocalDate[] month(String year, int month) {
        YearMonth of = YearMonth.of(Integer.parseInt(year), month);
        return new LocalDate[] {of.atDay(1), of.atEndOfMonth()};
    }

    private static Refusal refusal(String entered, Message why) {
        return Refusal.of("measure.date.unreadable-why", "entered", entered, "why", why);
    }
}
