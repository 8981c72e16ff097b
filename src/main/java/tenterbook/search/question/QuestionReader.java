package tenterbook.search.question;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import tenterbook.search.query.Order;
import tenterbook.search.query.UserText;
import tenterbook.words.Message;

/**
 * Reads what a person asked, in English and Portuguese: facts that the record has, and words for the rest. Nothing typed is wrong: what is
 * no fact is a word, and what stands in quotes is always words.
 */
public final class QuestionReader {
    private final WordTable table = WordTable.SHIPPED;
    private final List<Match.Matcher> matchers;

    /**
     * @param lexicon the names that the archive uses
     * @param known whether a piece has a number that may be shortened to this one
     * @param begins whether a piece has a number that begins so
     * @param today the day from which 'last year' is counted; asked for only by such words
     */
    public QuestionReader(
            Lexicon lexicon, Predicate<String> known, Predicate<String> begins, Supplier<LocalDate> today) {
        Boards boards = new Boards(lexicon);
        Times times = new Times(today);
        this.matchers = List.of(
                boards,
                new Numbers(known, begins),
                new Quantities(),
                new Events(lexicon, times),
                times,
                new Names(lexicon, boards));
    }

    public Reading read(String typed) {
        return new Text(typed).read();
    }

    /** One question, read from left to right. */
    private final class Text {
        private final String typed;
        private final List<Token> tokens;
        private final List<Understood> facts = new ArrayList<>();
        private final List<String> words = new ArrayList<>();
        private final List<String> weighing = new ArrayList<>();
        private int lastWord = -1;
        private Order order;

        Text(String typed) {
            this.typed = typed;
            this.tokens = Token.of(typed);
        }

        Reading read() {
            int at = 0;
            List<Integer> plain = new ArrayList<>();
            while (at < tokens.size()) {
                int next = ordered(at);
                next = next == at ? fact(at) : next;
                if (next == at) {
                    plain.add(at++);
                } else {
                    at = next;
                }
            }
            plain.forEach(this::word);
            boolean atEnd = lastWord == tokens.size() - 1;
            return new Reading(
                    facts,
                    UserText.read(String.join(" ", words) + (atEnd ? "" : " ")),
                    UserText.read(String.join(" ", weighing) + " "),
                    order);
        }

        /** Reads 'largest', 'cheapest' and the like; the first token after it, or where it was where there is none. */
        private int ordered(int at) {
            WordTable.Found found = table.longest("order", tokens, at);
            if (found == null) {
                return at;
            }
            order = Order.valueOf(found.value());
            return found.end();
        }

        /** Reads a fact; the first token after it, or where it was where there is none. */
        private int fact(int at) {
            Match whole = match(at);
            WordTable.Found deny = table.longest("deny", tokens, at);
            boolean dash = minus(at);
            if (whole != null && !whole.deniedOnly() && !dash && (deny == null || whole.end() > deny.end())) {
                return added(whole, at);
            }
            if (deny == null && !dash) {
                return at;
            }
            int from = dash ? at + 1 : deny.end();
            while (!dash
                    && from < tokens.size()
                    && tokens.get(from).is("a", "an", "any", "the", "um", "uma", "o", "as", "os")) {
                from++;
            }
            Match denied = from < tokens.size() ? match(from) : null;
            boolean lack = deny != null && deny.value().equals("lack");
            if (denied == null || lack && !denied.deniedOnly()) {
                return whole == null || whole.deniedOnly() || dash ? at : added(whole, at);
            }
            add(denied, at, !denied.deniedOnly());
            return denied.end();
        }

        private int added(Match whole, int at) {
            add(whole, at, false);
            return whole.end();
        }

        private boolean minus(int at) {
            Token token = tokens.get(at);
            return token.is("-")
                    && !token.glued()
                    && at + 1 < tokens.size()
                    && tokens.get(at + 1).glued();
        }

        private Match match(int at) {
            if (tokens.get(at).kind() == Token.Kind.QUOTED) {
                return null;
            }
            for (Match.Matcher matcher : matchers) {
                Match match = matcher.at(tokens, at);
                if (match != null) {
                    return match;
                }
            }
            return null;
        }

        private void add(Match match, int from, boolean not) {
            int start = tokens.get(from).start();
            int end = tokens.get(match.end() - 1).end();
            String before = typed.substring(0, start);
            String after = typed.substring(end);
            String own = typed.substring(start, end);
            if (match.weighs() && !not) {
                weighing.add(own);
            }
            Understood fact = new Understood(
                    not ? match.constraint().negated() : match.constraint(),
                    not ? Message.of("question.not", "what", match.label()) : match.label(),
                    own,
                    (before + after).replaceAll("\\s+", " ").strip(),
                    before + '"' + own.replace("\"", "") + '"' + after);
            Understood last = facts.isEmpty() ? null : facts.get(facts.size() - 1);
            boolean or = from > 0 && tokens.get(from - 1).is("or", "ou");
            Understood both = last == null ? null : last.or(fact, or);
            if (both == null) {
                facts.add(fact);
            } else {
                facts.set(facts.size() - 1, both);
            }
        }

        private void word(int at) {
            Token token = tokens.get(at);
            if (token.kind() == Token.Kind.SIGN) {
                return;
            }
            if (token.kind() != Token.Kind.QUOTED && dropped(token)) {
                return;
            }
            String text = typed.substring(token.start(), token.end());
            if (at > 0 && (minus(at - 1) || tokens.get(at - 1).is("not", "without", "except", "sem", "nao"))) {
                text = "-" + text;
            }
            if (token.glued() && lastWord >= 0 && at - lastWord <= 2 && joined(at)) {
                words.set(words.size() - 1, words.get(words.size() - 1) + between(at) + text);
            } else {
                words.add(text);
            }
            lastWord = at;
        }

        /** Whether a token continues the word before it, as in 'M12-3'. */
        private boolean joined(int at) {
            for (int i = lastWord + 1; i <= at; i++) {
                if (!tokens.get(i).glued()) {
                    return false;
                }
            }
            return true;
        }

        private String between(int at) {
            return typed.substring(tokens.get(lastWord).end(), tokens.get(at).start());
        }

        private boolean dropped(Token token) {
            boolean others = !facts.isEmpty() || order != null;
            if (!table.has("noun", token) && !table.has("idle", token) && !table.has("deny", token)) {
                return false;
            }
            return others
                    || tokens.stream()
                            .anyMatch(other -> other.word() && !table.has("idle", other) && !table.has("noun", other));
        }
    }
}
