package tenterbook.measure;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Days and instants as people read them: '14 March 2024' in sentences, which cannot be misread; ISO 8601, '2024-03-14', in
 * tables, data and file names, where it sorts. Instants are shown in the reader's time zone on a 24-hour clock.
 */
public final class DateWords {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private DateWords() {}

    private record Day(LocalDate date) implements Written {
        @Override
        public String in(Conventions conventions) {
            if (conventions.dateOrder() == Conventions.DateOrder.YEAR_FIRST) {
                return date.toString();
            }
            // Month names and the words between the parts are the language's own, as in '14 de março de 2024'.
            Message pattern = conventions.dateOrder() == Conventions.DateOrder.DAY_FIRST
                    ? Message.of("measure.day-first")
                    : Message.of("measure.month-first");
            return DateTimeFormatter.ofPattern(pattern.in(conventions), conventions.language())
                    .format(date);
        }
    }

    private record Moment(Instant instant) implements Written {
        @Override
        public String in(Conventions conventions) {
            ZonedDateTime there = instant.atZone(conventions.zone());
            return Message.of("measure.moment", "day", day(there.toLocalDate()), "time", CLOCK.format(there))
                    .in(conventions);
        }
    }

    private record DayOf(Instant instant) implements Written {
        @Override
        public String in(Conventions conventions) {
            return day(instant.atZone(conventions.zone()).toLocalDate()).in(conventions);
        }
    }

    /** '14 March 2024'. */
    public static Written day(LocalDate date) {
        return new Day(date);
    }

    /** The day of an instant in the reader's time zone. */
    public static Written day(Instant instant) {
        return new DayOf(instant);
    }

    /** '14 March 2024, 16:05'. */
    public static Written moment(Instant instant) {
        return new Moment(instant);
    }
}
