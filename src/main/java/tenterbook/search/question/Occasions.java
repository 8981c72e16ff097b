package tenterbook.search.question;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Stems;
import tenterbook.words.Message;

/**
 * When a piece was finished, by something that happened in the archive: 'before the museum loan', 'after the repair'. Where several
 * would fit, the latest is taken and the others are offered by their day.
 */
final class Occasions implements Match.Matcher {
    /** Words between 'before' and the end of the occasion, at most. */
    private static final int LONGEST = 7;

    private final WordTable words = WordTable.SHIPPED;
    private final Lexicon lexicon;

    Occasions(Lexicon lexicon) {
        this.lexicon = lexicon;
    }

    /** Something that happened on days known at both ends. */
    private record Occasion(String kind, LocalDate first, LocalDate last, String party) {}

    @Override
    public @Nullable Match at(List<Token> tokens, int from) {
        WordTable.Found bound = words.longest("bound", tokens, from);
        if (bound == null || bound.value().equals("between")) {
            return null;
        }
        for (int end = Math.min(tokens.size(), bound.end() + LONGEST); end > bound.end(); end--) {
            Match match = match(bound, tokens.subList(bound.end(), end), end);
            if (match != null) {
                return match;
            }
        }
        return null;
    }

    /** By one noun for what happened and words of who was concerned; without those words an article is needed, as in 'the repair'. */
    private @Nullable Match match(WordTable.Found bound, List<Token> tokens, int end) {
        String kind = null;
        boolean article = false;
        List<String> named = new ArrayList<>();
        for (Token token : tokens) {
            String noun = words.value("occasion", List.of(token));
            if (!token.word() || noun != null && kind != null) {
                return null;
            }
            kind = noun == null ? kind : noun;
            article |= words.has("article", token);
            if (noun == null && !words.has("idle", token)) {
                named.add(token.text());
            }
        }
        boolean ends = !words.has("idle", tokens.get(tokens.size() - 1));
        if (kind == null || !ends || named.isEmpty() && !article) {
            return null;
        }
        List<Occasion> found = occasions(kind, named);
        if (!found.isEmpty()) {
            return match(bound.value(), found, end);
        }
        return named.isEmpty() ? none(bound.value(), kind, end) : null;
    }

    /** Nothing of the kind is recorded, so nothing was finished before or after it. */
    private static Match none(String bound, String kind, int end) {
        Message when = Message.of("question.no-occasion", "event", Message.of("piece.event." + kind));
        return new Match(
                end,
                new Constraint.OfFacet(Facet.EVENT, Set.of(), false),
                Message.of("question.finished", "when", Message.of("question.bound", "bound", bound, "when", when)));
    }

    private List<Occasion> occasions(String kind, List<String> named) {
        Map<LocalDate, Occasion> found = new TreeMap<>(Comparator.reverseOrder());
        for (Lexicon.Name each : lexicon.all(Facet.EVENT)) {
            String[] parts = each.folded().split("/", -1);
            boolean dated = parts.length == 3 && !parts[1].isEmpty() && !parts[2].isEmpty();
            boolean about =
                    named.isEmpty() || !each.label().equals(each.value()) && Stems.allAmong(named, each.words());
            if (dated && about && List.of(kind.split(" ")).contains(parts[0])) {
                LocalDate first = LocalDate.parse(parts[1]);
                String party = each.label().equals(each.value()) ? "" : each.label();
                found.putIfAbsent(first, new Occasion(parts[0], first, LocalDate.parse(parts[2]), party));
            }
        }
        return List.copyOf(found.values());
    }

    private static Match match(String bound, List<Occasion> found, int end) {
        Occasion latest = found.get(0);
        Days days = Times.bounded(bound, new Days(latest.first(), latest.last()));
        Message when = Message.of(
                "question.occasion",
                "event",
                Message.of("piece.event." + latest.kind()),
                "when",
                latest.first().toString(),
                "with",
                !latest.party().isEmpty(),
                "party",
                latest.party());
        List<String> others = found.stream()
                .skip(1)
                .map(other -> bound + " " + (bound.equals("after") ? other.last() : other.first()))
                .toList();
        return new Match(
                        end,
                        new Constraint.OfDays(days, false),
                        Message.of(
                                "question.finished",
                                "when",
                                Message.of("question.bound", "bound", bound, "when", when)))
                .offering(others);
    }
}
