package tenterbook.search.question;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Days;
import tenterbook.words.Message;

/**
 * Months and seasons without a year: 'in may' and 'between march and may' are those of whatever year; 'before june', 'after spring',
 * 'since' and 'until' count from the latest one that is past.
 */
final class Months {
    /** Months by season of the northern half of the year, as {@link tenterbook.measure.DateText} reads them: the first of three. */
    private static final Map<String, Integer> SEASONS = Map.of("spring", 3, "summer", 6, "autumn", 9, "winter", 12);

    private static final int OF_SEASON = 3;
    private static final int OF_YEAR = 12;

    /** These are times only after a word such as 'in'. */
    private static final Set<String> OTHER_WORDS =
            Set.of("may", "march", "mar", "jan", "dec", "spring", "fall", "autumn", "summer", "winter");

    private static final WordTable WORDS = WordTable.SHIPPED;

    private final Supplier<LocalDate> day;

    Months(Supplier<LocalDate> day) {
        this.day = day;
    }

    /** @param first 1 to 12 */
    private record Named(String name, int first, int count, int end) {
        int last() {
            return (first + count - 2) % OF_YEAR + 1;
        }

        /** As 'June 2026'. */
        Message of(YearMonth begun) {
            return count == OF_SEASON
                    ? Message.of("question.season", "season", name, "year", Integer.toString(begun.getYear()))
                    : Message.of("question.month", "month", month(first), "year", Integer.toString(begun.getYear()));
        }
    }

    /** The time that begins at a token; null where none does. */
    Times.@Nullable When at(List<Token> tokens, int from) {
        WordTable.Found bound = WORDS.longest("bound", tokens, from);
        bound = bound == null && tokens.get(from).is("last", "past") ? new WordTable.Found("last", from + 1) : bound;
        if (bound != null) {
            Times.When when = bound.value().equals("between") ? between(tokens, bound.end()) : bounded(tokens, bound);
            if (when != null) {
                return when;
            }
        }
        Times.When two = between(tokens, from);
        return two != null ? two : months(tokens, from);
    }

    private static Times.@Nullable When between(List<Token> tokens, int from) {
        Named one = named(tokens, from);
        if (one == null
                || one.end() >= tokens.size()
                || !tokens.get(one.end()).is("and", "to", "e", "a", "-", "until", "ate")) {
            return null;
        }
        Named other = named(tokens, one.end() + 1);
        return other == null || Times.isYear(tokens, other.end())
                ? null
                : new Times.When(other.end(), null, from(one.first(), other.last()));
    }

    /** From one month to another, past the end of the year where the other comes before it. */
    private static Set<Integer> from(int first, int last) {
        return IntStream.range(0, (last - first + OF_YEAR) % OF_YEAR + 1)
                .mapToObj(more -> (first - 1 + more) % OF_YEAR + 1)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private Times.@Nullable When bounded(List<Token> tokens, WordTable.Found bound) {
        Named named = named(tokens, bound.end());
        if (named == null || Times.isYear(tokens, named.end())) {
            return null;
        }
        YearMonth now = YearMonth.from(day.get());
        boolean after = bound.value().equals("after") || bound.value().equals("last");
        YearMonth begun = YearMonth.of(now.getYear(), named.first());
        while (begun.isAfter(now)
                || after && !begun.plusMonths(named.count() - 1L).isBefore(now)) {
            begun = begun.minusYears(1);
        }
        LocalDate first = begun.atDay(1);
        LocalDate last = begun.plusMonths(named.count() - 1L).atEndOfMonth();
        if (bound.value().equals("last")) {
            return new Times.When(named.end(), new Days(first, last), Set.of(), named.of(begun), List.of());
        }
        Days days = Times.bounded(bound.value(), new Days(first, last));
        return new Times.When(
                named.end(),
                days,
                Set.of(),
                Message.of("question.bound", "bound", bound.value(), "when", named.of(begun)),
                ofEveryYear(bound.value(), named));
    }

    /** The same part of whatever year, as it would be typed. */
    private static List<String> ofEveryYear(String bound, Named named) {
        boolean from = bound.equals("since") || bound.equals("after");
        int first = bound.equals("since") ? named.first() : named.last() + 1;
        int last = bound.equals("before") ? named.first() - 1 : named.last();
        int one = from ? first : 1;
        int other = from ? OF_YEAR : last;
        return one > other || other < 1
                ? List.of()
                : List.of(String.format(Locale.ROOT, "between %s and %s", month(one), month(other)));
    }

    /** A month or a season after 'in', or a month whose name is no other word. */
    private static Times.@Nullable When months(List<Token> tokens, int from) {
        int at = from;
        boolean in = tokens.get(at).is("in", "em", "no", "na", "during", "every", "this");
        at += in ? 1 : 0;
        Named named = named(tokens, at);
        return named == null || !in && OTHER_WORDS.contains(named.name())
                ? null
                : new Times.When(named.end(), null, from(named.first(), named.last()));
    }

    private static @Nullable Named named(List<Token> tokens, int from) {
        int at = from;
        while (at < tokens.size() && tokens.get(at).is("the", "o", "a", "do", "da", "de", "of")) {
            at++;
        }
        if (at >= tokens.size() || !tokens.get(at).word()) {
            return null;
        }
        String word = Times.english(tokens.get(at).text());
        if (SEASONS.containsKey(word)) {
            return new Named(word, SEASONS.get(word), OF_SEASON, at + 1);
        }
        for (int month = 1; month <= OF_YEAR; month++) {
            String name = month(month).toLowerCase(Locale.ROOT);
            if (word.equals(name) || word.equals(name.substring(0, OF_SEASON))) {
                return new Named(word, month, 1, at + 1);
            }
        }
        return null;
    }

    /** As in 'June'. */
    static String month(int month) {
        return Month.of(month).getDisplayName(TextStyle.FULL, Locale.UK);
    }
}
