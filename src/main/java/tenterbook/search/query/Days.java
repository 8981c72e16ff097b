package tenterbook.search.query;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A range of days, both ends included.
 *
 * @param from or null for no beginning
 * @param to not before {@code from}, or null for no end
 */
public record Days(LocalDate from, LocalDate to) {
    /** @throws IllegalArgumentException if both ends are missing or they are swapped */
    public Days {
        if (from == null && to == null) {
            throw Refusal.of("search.range.no-end");
        }
        if (from != null && to != null && from.isAfter(to)) {
            throw Refusal.of("search.range.days-backwards");
        }
    }

    /**
     * Reads {@code 2024}, {@code 2024-01..2024-06}, {@code 2024-03-05..} and so on.
     *
     * @throws IllegalArgumentException with the reason, for a message of the caller
     */
    public static Days read(String text) {
        String[] ends = Span.ends(text);
        return new Days(ends[0].isEmpty() ? null : end(ends[0], false), ends[1].isEmpty() ? null : end(ends[1], true));
    }

    private static LocalDate end(String text, boolean last) {
        try {
            if (text.matches("\\d{4}")) {
                int year = Integer.parseInt(text);
                return last ? LocalDate.of(year, 12, 31) : LocalDate.of(year, 1, 1);
            }
            if (text.matches("\\d{4}-\\d{2}")) {
                YearMonth month = YearMonth.parse(text);
                return last ? month.atEndOfMonth() : month.atDay(1);
            }
            if (text.matches("\\d{4}-\\d{2}-\\d{2}")) {
                return LocalDate.parse(text);
            }
        } catch (DateTimeException e) {
            throw new Refusal(Message.of("search.range.no-day", "found", text), e);
        }
        throw Refusal.of("search.range.not-a-day", "found", text);
    }

    /** As {@link #read} takes it, as short as it can be written. */
    @Override
    public String toString() {
        if (from != null && to != null && from.getYear() == to.getYear()) {
            if (from.getDayOfYear() == 1 && to.getDayOfYear() == to.lengthOfYear()) {
                return shortened(from, 4);
            }
            if (from.equals(to)) {
                return from.toString();
            }
            if (from.getDayOfMonth() == 1 && to.equals(YearMonth.from(from).atEndOfMonth())) {
                return shortened(from, 7);
            }
        }
        return end(from, from != null && from.getDayOfMonth() == 1)
                + ".."
                + end(to, to != null && to.getDayOfMonth() == to.lengthOfMonth());
    }

    private static String end(LocalDate day, boolean ofMonth) {
        if (day == null) {
            return "";
        }
        return ofMonth ? shortened(day, 7) : day.toString();
    }

    private static String shortened(LocalDate day, int length) {
        return day.toString().substring(0, length);
    }
}
