package tenterbook.search.question;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.words.Message;

/** The maker's own words for what the archive records, by what they mean in words that are read. */
final class OwnWords {
    static final OwnWords NONE = new OwnWords(Map.of());

    private final Map<String, String> means = new HashMap<>();

    /** @param own each word or phrase with what it means */
    OwnWords(Map<String, String> own) {
        own.forEach((word, meaning) -> means.put(WordTable.key(WordTable.SHIPPED.tokens(word)), meaning));
    }

    /** The longest that begins at a token; null where none does. */
    WordTable.@Nullable Found longest(List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + WordTable.LONGEST); !means.isEmpty() && end > from; end--) {
            String key = WordTable.key(tokens.subList(from, end));
            if (!key.isEmpty() && means.containsKey(key)) {
                return new WordTable.Found(means.get(key), end);
            }
        }
        return null;
    }

    /** What one of the maker's own words stands for in a question: facts, words, or both. */
    static final class Meaning {
        private final List<Understood> facts;
        private final WordsLeft words;
        private final String typed;
        private final int end;

        /**
         * @param meaning what the word stands for, not read yet
         * @param typed the word
         * @param end the first token after it
         */
        Meaning(QuestionText meaning, String typed, int end) {
            this.facts = meaning.understood();
            this.words = meaning.words();
            this.typed = typed;
            this.end = end;
        }

        int end() {
            return end;
        }

        /** Null where it stands for more than one fact, or for words. */
        @Nullable
        Match fact() {
            return !words.none() || facts.size() != 1 || facts.get(0).constraint() == null
                    ? null
                    : new Match(end, facts.get(0).constraint(), own(facts.get(0).label()));
        }

        void addTo(Parts parts, WordsLeft asked, int start, int last) {
            if (!words.wanted().isEmpty()) {
                parts.words(own(Message.of("question.words", "words", words.wanted())), start, last);
            }
            for (String word : words.denied()) {
                parts.withoutWord(own(Message.of("question.without-word", "word", word)), start, last);
            }
            asked.addAll(words);
            for (Understood fact : facts) {
                if (fact.constraint() != null) {
                    parts.fact(fact.constraint(), own(fact.label()), start, last);
                }
            }
        }

        /**
         * Asks for pieces that have not all of its facts, and have none of its words.
         *
         * @return false where nothing was done: it is one fact, denied like those of the trade, or the number of a piece is among several,
         *     of which no alternative can be made
         */
        boolean denyIn(Parts parts, WordsLeft asked, int start, int last) {
            List<Constraint> all = facts.stream()
                    .map(Understood::constraint)
                    .filter(Objects::nonNull)
                    .toList();
            if (fact() != null || all.size() > 1 && all.stream().anyMatch(Constraint.OfPieceNumber.class::isInstance)) {
                return false;
            }
            if (!all.isEmpty()) {
                parts.fact(
                        all.size() == 1
                                ? all.get(0).negated()
                                : new Constraint.AnyOf(
                                        all.stream().map(Constraint::negated).toList(), false),
                        own(denied()),
                        start,
                        last);
            }
            for (String word : words.denyIn(asked)) {
                parts.withoutWord(own(Message.of("question.without-word", "word", word)), start, last);
            }
            return true;
        }

        private Message denied() {
            List<Message> labels = facts.stream()
                    .filter(fact -> fact.constraint() != null)
                    .map(Understood::label)
                    .toList();
            Message all = labels.get(0);
            for (Message each : labels.subList(1, labels.size())) {
                all = Message.of("question.both", "one", all, "other", each);
            }
            return labels.size() == 1 ? Parts.not(all) : Message.of("question.not-all", "what", all);
        }

        private Message own(Message label) {
            return Message.of("question.own", "what", label, "word", typed);
        }
    }
}
