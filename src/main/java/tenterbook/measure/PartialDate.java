package tenterbook.measure;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.PaperLanguage;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * A date known as far as it is known: a day, a month, a season, a year, a decade, a range, or 'forgot'.
 *
 * @param entered the text exactly as typed; empty where nothing was entered
 * @param from first day it can mean, or null
 * @param to last day it can mean, or null
 * @param about whether the text has 'about'; it does not widen {@code from} and {@code to}
 */
public record PartialDate(
        String entered, @Nullable LocalDate from, @Nullable LocalDate to, boolean about) implements Written {
    public static final PartialDate UNRECORDED = new PartialDate("", null, null, false);

    public PartialDate {
        entered = entered == null ? "" : entered;
        if (from != null && to != null && from.isAfter(to)) {
            throw Refusal.of("measure.date.backwards", "from", from, "to", to);
        }
    }

    public static PartialDate of(LocalDate day) {
        return new PartialDate(day.toString(), day, day, false);
    }

    public boolean known() {
        return from != null || to != null;
    }

    public boolean recorded() {
        return known() || !entered.isBlank();
    }

    /** The year; null where the date does not lie in one. */
    public @Nullable Integer year() {
        return from != null && to != null && from.getYear() == to.getYear() ? from.getYear() : null;
    }

    /** Whether it is one day and nothing else was said of it. */
    private boolean wholeDay() {
        return from != null && from.equals(to) && !about;
    }

    /** As entered; on a paper, which has one form of dates throughout, a whole day in words. 'Not recorded' where nothing was. */
    @Override
    public String in(Conventions conventions) {
        if (wholeDay() && PaperLanguage.isOf(conventions)) {
            return DateWords.day(from).in(conventions);
        }
        return entered.isBlank() ? Message.of("measure.not-recorded").in(conventions) : entered;
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
