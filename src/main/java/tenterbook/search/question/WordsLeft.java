package tenterbook.search.question;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import tenterbook.search.query.UserText;

/** The words of a question that are no facts, as they are looked for. */
final class WordsLeft {
    private final WordTable table = WordTable.SHIPPED;
    private final String typed;
    private final List<Token> tokens;
    private final BooleanSupplier facts;
    private final List<String> words = new ArrayList<>();
    /** Places of tokens that are looked for in any case. */
    private final Set<Integer> kept = new HashSet<>();

    private int last = -1;

    /** @param facts whether the question has facts besides */
    WordsLeft(String typed, List<Token> tokens, BooleanSupplier facts) {
        this.typed = typed;
        this.tokens = tokens;
        this.facts = facts;
    }

    boolean none() {
        return words.isEmpty();
    }

    /** Those that are to be found, as in the question, without quotes; empty for none. */
    String wanted() {
        return words.stream()
                .filter(word -> !word.startsWith("-"))
                .collect(Collectors.joining(" "))
                .replace("\"", "");
    }

    /** Those that must not be found, without quotes. */
    List<String> denied() {
        return words.stream()
                .filter(word -> word.startsWith("-"))
                .map(word -> word.substring(1).replace("\"", ""))
                .toList();
    }

    /** Which words are one too many to be looked for, with all after them; empty where all are looked for. */
    Optional<String> beyond() {
        return UserText.beyond(String.join(" ", words)).map(part -> String.join(" ", part.words()));
    }

    /** Takes a token even where it says nothing beside the others. */
    void keep(int at) {
        kept.add(at);
    }

    /** The last word may go on where it ends the question. */
    UserText text() {
        return UserText.read(String.join(" ", words) + (last == tokens.size() - 1 ? "" : " "));
    }

    /** @param plain whether it is one word */
    void deny(String word, boolean plain) {
        words.add("-" + (plain ? word : '"' + word + '"'));
    }

    /**
     * Denies each of them in other words.
     *
     * @return those that must not be found
     */
    List<String> denyIn(WordsLeft asked) {
        List<String> denied = new ArrayList<>();
        for (String word : words) {
            if (word.startsWith("-")) {
                asked.words.add(word.substring(1));
            } else {
                asked.words.add("-" + word);
                denied.add(word.replace("\"", ""));
            }
        }
        return denied;
    }

    void addAll(WordsLeft others) {
        words.addAll(others.words);
    }

    /** Takes a token, unless it says nothing beside the others. */
    void add(int at) {
        Token token = tokens.get(at);
        if (token.kind() == Token.Kind.SIGN || token.kind() != Token.Kind.QUOTED && dropped(at)) {
            return;
        }
        String text = typed.substring(token.start(), token.end());
        if (token.glued() && last >= 0 && at - last <= 2 && joined(at)) {
            String between = typed.substring(tokens.get(last).end(), token.start());
            words.set(words.size() - 1, words.get(words.size() - 1) + between + text);
        } else {
            words.add(text);
        }
        last = at;
    }

    /** Whether a token continues the word before it, as in 'M12-3'. */
    private boolean joined(int at) {
        for (int i = last + 1; i <= at; i++) {
            if (!tokens.get(i).glued() || tokens.get(i).kind() == Token.Kind.QUOTED) {
                return false;
            }
        }
        return true;
    }

    /** Whether a word says nothing beside the others. */
    boolean dropped(int at) {
        Token token = tokens.get(at);
        if (kept.contains(at)
                || !table.has("noun", token) && !table.has("idle", token) && !table.has("deny", token)
                || token.is("need", "needs")) {
            return false;
        }
        return facts.getAsBoolean()
                || tokens.stream()
                        .anyMatch(other -> other.word() && !table.has("idle", other) && !table.has("noun", other))
                || tokens.stream().allMatch(other -> table.has("idle", other) || table.has("piece", other));
    }
}
