package tenterbook.search.question;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.DateText;
import tenterbook.measure.PartialDate;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** When a piece was finished: 'may 2024', '2024-09', 'spring 2024', 'before 2023', 'last year', 'dezembro de 2024'. */
final class Times implements Match.Matcher {
    private static final int LONGEST = 8;
    private static final Pattern AGO =
            Pattern.compile("(?:ha )?(\\d{1,3}) (years?|months?|anos?|mes(?:es)?)(?: ago| atras)?");
    private static final Pattern TWO_MONTHS =
            Pattern.compile("^([a-z]{3,9}) (?:to|and|or|a|e|-) ([a-z]{3,9}) (\\d{4})$");
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2099;

    /** Portuguese words of dates, as {@link DateText} knows them. */
    private static final Map<String, String> ENGLISH = Map.ofEntries(
            Map.entry("janeiro", "january"),
            Map.entry("fevereiro", "february"),
            Map.entry("marco", "march"),
            Map.entry("abril", "april"),
            Map.entry("maio", "may"),
            Map.entry("junho", "june"),
            Map.entry("julho", "july"),
            Map.entry("agosto", "august"),
            Map.entry("setembro", "september"),
            Map.entry("outubro", "october"),
            Map.entry("novembro", "november"),
            Map.entry("dezembro", "december"),
            Map.entry("primavera", "spring"),
            Map.entry("verao", "summer"),
            Map.entry("outono", "autumn"),
            Map.entry("inverno", "winter"),
            Map.entry("fall", "autumn"),
            Map.entry("antes", "before"),
            Map.entry("depois", "after"),
            Map.entry("apos", "after"),
            Map.entry("desde", "since"),
            Map.entry("ate", "to"),
            Map.entry("entre", "between"),
            Map.entry("until", "to"));

    private static final Set<String> PASSED_OVER =
            Set.of("of", "the", "de", "do", "da", "in", "em", "during", "from", "made", "finished");

    private final Supplier<LocalDate> day;
    private final Months open;

    /** @param day from which 'last year' is counted; asked for only by such words */
    Times(Supplier<LocalDate> day) {
        this.day = day;
        this.open = new Months(day);
    }

    /** An English word of dates for a Portuguese one; other words as they are. */
    static String english(String word) {
        return ENGLISH.getOrDefault(word, word);
    }

    /**
     * A time found.
     *
     * @param days null for months of whatever year
     * @param months 1 to 12; empty where there are days
     * @param words for people; null where days or months say enough
     * @param others what may have been meant instead, as it would be typed
     */
    record When(
            int end,
            @Nullable Days days,
            Set<Integer> months,
            @Nullable Message words,
            List<String> others) {
        When(int end, @Nullable Days days, Set<Integer> months) {
            this(end, days, months, null, List.of());
        }
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        When when = when(tokens, from);
        if (when == null) {
            return null;
        }
        Constraint constraint = when.days() == null
                ? new Constraint.OfMonth(when.months(), false)
                : new Constraint.OfDays(when.days(), false);
        return new Match(when.end(), constraint, Message.of("question.finished", "when", words(when)))
                .offering(when.others());
    }

    /** @param bound 'before', 'after', 'since' or 'until' */
    static Days bounded(String bound, Days days) {
        return switch (bound) {
            case "before" -> new Days(null, days.from().minusDays(1));
            case "after" -> new Days(days.to().plusDays(1), null);
            case "since" -> new Days(days.from(), null);
            default -> new Days(null, days.to());
        };
    }

    /** Whether a token is a year of these times. */
    static boolean isYear(List<Token> tokens, int at) {
        return at < tokens.size() && year(tokens.get(at));
    }

    static Message words(When when) {
        if (when.words() != null) {
            return when.words();
        }
        if (when.days() == null) {
            String months = when.months().stream().sorted().map(Months::month).collect(Collectors.joining(", "));
            return Message.of("question.time", "when", months);
        }
        String plain = when.days().toString();
        String[] ends = plain.split("\\.\\.", -1);
        return ends.length == 1
                ? Message.of("question.time", "when", plain)
                : Message.of("question.days", "from", ends[0], "to", ends[1], "ends", ends(when.days()));
    }

    private static String ends(Days days) {
        return days.from() == null ? "to" : days.to() == null ? "from" : "both";
    }

    When when(List<Token> tokens, int from) {
        WordTable.Found bound = WordTable.SHIPPED.longest("bound", tokens, from);
        if (bound != null && !bound.value().equals("between")) {
            for (int end = Math.min(tokens.size(), bound.end() + LONGEST); end > bound.end(); end--) {
                List<Token> some = tokens.subList(bound.end(), end);
                Days days = some.stream().anyMatch(Times::year) ? read(some) : null;
                if (days != null && days.from() != null && days.to() != null) {
                    return new When(end, bounded(bound.value(), days), Set.of());
                }
            }
        }
        for (int end = Math.min(tokens.size(), from + LONGEST); end > from; end--) {
            List<Token> some = tokens.subList(from, end);
            Days days = relative(some);
            if (days == null && some.stream().anyMatch(Times::year)) {
                days = read(some);
            }
            if (days != null) {
                return new When(end, days, Set.of());
            }
        }
        return open.at(tokens, from);
    }

    private static boolean year(Token token) {
        return token.number() && token.text().matches("\\d{4}") && year(Double.parseDouble(token.text()));
    }

    /** Whether a number may be a year of these times. */
    static boolean year(double number) {
        return number >= FIRST_YEAR && number <= LAST_YEAR;
    }

    private Days relative(List<Token> tokens) {
        Matcher ago = AGO.matcher(WordTable.key(tokens));
        String word = WordTable.SHIPPED.value("time", tokens);
        if (!ago.matches() && word == null) {
            return null;
        }
        LocalDate today = day.get();
        YearMonth month = YearMonth.from(today);
        if (word == null) {
            long count = Long.parseLong(ago.group(1));
            return ago.group(2).startsWith("y") || ago.group(2).startsWith("a")
                    ? year((int) (today.getYear() - count))
                    : month(month.minusMonths(count));
        }
        return switch (word) {
            case "this-year" -> year(today.getYear());
            case "last-year" -> year(today.getYear() - 1);
            case "year-before" -> year(today.getYear() - 2);
            case "this-month" -> month(month);
            case "last-month" -> month(month.minusMonths(1));
            case "this-week" -> new Days(today.minusDays(today.getDayOfWeek().getValue() - 1L), today);
            case "today" -> new Days(today, today);
            case "yesterday" -> new Days(today.minusDays(1), today.minusDays(1));
            default -> null;
        };
    }

    private static Days year(int year) {
        return new Days(LocalDate.of(year, 1, 1), LocalDate.of(year, 12, 31));
    }

    private static Days month(YearMonth month) {
        return new Days(month.atDay(1), month.atEndOfMonth());
    }

    /** As {@link DateText} reads it; null where it is no date from end to end. */
    private static Days read(List<Token> tokens) {
        Token last = tokens.get(tokens.size() - 1);
        if (!last.number() && !last.word() || last.word() && PASSED_OVER.contains(last.text())) {
            return null;
        }
        List<String> words = new ArrayList<>();
        for (Token token : tokens) {
            String text = ENGLISH.getOrDefault(token.text(), token.text());
            if (PASSED_OVER.contains(text)) {
                continue;
            }
            if (token.glued() && !words.isEmpty()) {
                words.set(words.size() - 1, words.get(words.size() - 1) + text);
            } else {
                words.add(text);
            }
        }
        try {
            String text = String.join(" ", words).replaceFirst("^between (.+) (?:and|e) ", "$1 to ");
            text = TWO_MONTHS.matcher(text).replaceFirst("$1 $3 to $2 $3");
            PartialDate date = DateText.read(text);
            return date.known() && !date.about() ? new Days(date.from(), date.to()) : null;
        } catch (Refusal e) {
            return null;
        }
    }
}
