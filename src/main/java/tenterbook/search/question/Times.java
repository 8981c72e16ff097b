package tenterbook.search.question;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.measure.DateText;
import tenterbook.measure.PartialDate;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** When a piece was finished: 'may 2024', '2024-09', 'spring 2024', 'before 2023', 'last year', 'dezembro de 2024'. */
final class Times implements Match.Matcher {
    private static final int LONGEST = 7;
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
            Map.entry("until", "to"));

    private static final Set<String> PASSED_OVER =
            Set.of("of", "the", "de", "do", "da", "in", "em", "during", "from", "made", "finished");

    private final LocalDate today;

    Times(LocalDate today) {
        this.today = today;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + LONGEST); end > from; end--) {
            List<Token> some = tokens.subList(from, end);
            Days days = relative(WordTable.key(some));
            if (days == null && some.stream().anyMatch(Times::year)) {
                days = read(some);
            }
            if (days != null) {
                return new Match(
                        end,
                        new Constraint.OfDays(days, false),
                        Message.of("question.finished", "when", days.toString()));
            }
        }
        return null;
    }

    private static boolean year(Token token) {
        return token.number() && token.text().matches("\\d{4}") && year(Double.parseDouble(token.text()));
    }

    /** Whether a number may be a year of these times. */
    static boolean year(double number) {
        return number >= FIRST_YEAR && number <= LAST_YEAR;
    }

    private Days relative(String text) {
        YearMonth month = YearMonth.from(today);
        return switch (text) {
            case "this year", "este ano" -> year(today.getYear());
            case "last year", "ano passado", "o ano passado", "no ano passado" -> year(today.getYear() - 1);
            case "this month", "este mes" -> month(month);
            case "last month", "mes passado", "no mes passado" -> month(month.minusMonths(1));
            case "today", "hoje" -> new Days(today, today);
            case "yesterday", "ontem" -> new Days(today.minusDays(1), today.minusDays(1));
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
            PartialDate date = DateText.read(String.join(" ", words));
            return date.known() && !date.about() ? new Days(date.from(), date.to()) : null;
        } catch (Refusal e) {
            return null;
        }
    }
}
