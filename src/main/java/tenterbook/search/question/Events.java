package tenterbook.search.question;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.words.Message;

/** What happened to a piece, and when: 'sold in october', 'lent in 2024', 'washed'. */
final class Events implements Match.Matcher {
    private final WordTable words = WordTable.SHIPPED;
    private final Lexicon lexicon;
    private final Times times;

    Events(Lexicon lexicon, Times times) {
        this.lexicon = lexicon;
        this.times = times;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        WordTable.Found event = words.longest("event", tokens, from);
        if (event == null) {
            return null;
        }
        int at = event.end();
        if (at < tokens.size() && tokens.get(at).is("on", "again", "out")) {
            at++;
        }
        Times.When when = at < tokens.size() ? times.when(tokens, at) : null;
        List<Token> typed = tokens.subList(from, event.end());
        if (when == null && (words.value("status", typed) != null || words.value("has", typed) != null)) {
            return null;
        }
        Set<String> values = new LinkedHashSet<>();
        for (Lexicon.Name each : lexicon.all(Facet.EVENT)) {
            String[] parts = each.folded().split("/", -1);
            if (parts[0].equals(event.value()) && (when == null || fits(parts, when))) {
                values.add(each.folded());
            }
        }
        if (when == null && values.isEmpty()) {
            return null;
        }
        return new Match(
                        when == null ? event.end() : when.end(),
                        new Constraint.OfFacet(Facet.EVENT, values, false),
                        Message.of(
                                "question.event",
                                "event",
                                Message.of("piece.event." + event.value()),
                                "dated",
                                when != null,
                                "when",
                                when == null ? "" : Times.words(when)))
                .offering(
                        when == null
                                ? List.of()
                                : when.others().stream()
                                        .map(other -> event.value().replace('-', ' ') + " " + other)
                                        .toList());
    }

    /** @param parts kind, first and last possible day, each empty where it is not known */
    private static boolean fits(String[] parts, Times.When when) {
        LocalDate first = parts[1].isEmpty() ? null : LocalDate.parse(parts[1]);
        LocalDate last = parts[2].isEmpty() ? null : LocalDate.parse(parts[2]);
        if (first == null && last == null) {
            return false;
        }
        Days days = when.days();
        if (days == null) {
            return first != null
                    && last != null
                    && first.getYear() == last.getYear()
                    && when.months().contains(first.getMonthValue())
                    && when.months().contains(last.getMonthValue());
        }
        return (days.from() == null || last == null || !last.isBefore(days.from()))
                && (days.to() == null || first == null || !first.isAfter(days.to()));
    }
}
