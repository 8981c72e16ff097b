package tenterbook.search.question;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import tenterbook.search.query.Letters;
import tenterbook.words.Message;

/**
 * Reads what a person asked, in English and Portuguese: facts that the record has, and words for the rest. Nothing typed is wrong: what is
 * no fact is a word, and what stands in quotes is always words.
 */
public final class QuestionReader {
    private final List<Match.Matcher> matchers;
    private final Lexicon lexicon;
    private final OwnWords own;

    /** The numbers of the pieces. */
    public interface Pieces {
        /** The numbers, at most two, that may be shortened to this one, as in {@code v 24 7}. */
        List<String> numbered(String plain);

        /** Whether a piece has a number that begins so. */
        boolean beginning(String plain);
    }

    /**
     * What questions are read with besides the archive's names.
     *
     * @param today the day from which 'last year' is counted; asked for only by such words
     * @param ownWords the maker's own words, each with what it means
     */
    public record Background(Supplier<LocalDate> today, Map<String, String> ownWords) {}

    /**
     * A question of which a misspelt word was corrected.
     *
     * @param remark which word was read as which
     */
    public record Corrected(Reading reading, Message remark) {}

    /** @param lexicon the names that the archive uses */
    public QuestionReader(Lexicon lexicon, Pieces pieces, Background background) {
        this.lexicon = lexicon;
        this.own = new OwnWords(background.ownWords());
        Boards boards = new Boards(lexicon);
        Times times = new Times(background.today());
        this.matchers = List.of(
                boards,
                new Numbers(pieces),
                new Quantities(lexicon),
                new Events(lexicon, times),
                times,
                new Occasions(lexicon),
                new Names(lexicon, boards));
    }

    public Reading read(String typed) {
        return new QuestionText(typed, matchers, own).read();
    }

    /** What a text is read as: labels of its facts, then its words. */
    public List<Message> meaning(String typed) {
        return new QuestionText(typed, matchers, own).labels();
    }

    /** Whether all of a text is facts. */
    public boolean isFact(String typed) {
        return new QuestionText(typed, matchers, own).facts();
    }

    /**
     * The question with words that no piece has, and that are no facts, read as the nearest words for facts.
     *
     * @param written whether a piece has a word, folded
     * @return empty where no word is near enough
     */
    public Optional<Corrected> corrected(String typed, Predicate<String> written) {
        Set<String> known = new HashSet<>(WordTable.SHIPPED.singleWords());
        known.addAll(lexicon.words());
        StringBuilder text = new StringBuilder(typed);
        List<String> wrong = new ArrayList<>();
        List<String> right = new ArrayList<>();
        List<Token> words = new ArrayList<>(new QuestionText(typed, matchers, own).wordsLeft());
        Collections.reverse(words);
        for (Token word : words) {
            Optional<String> nearest =
                    written.test(word.text()) ? Optional.empty() : Letters.nearest(word.text(), known);
            if (nearest.isPresent()) {
                text.replace(word.start(), word.end(), nearest.get());
                wrong.add(0, word.text());
                right.add(0, nearest.get());
            }
        }
        return wrong.isEmpty()
                ? Optional.empty()
                : Optional.of(new Corrected(
                        read(text.toString()),
                        Message.of(
                                "question.corrected",
                                "typed",
                                String.join(", ", wrong),
                                "read",
                                String.join(", ", right))));
    }
}
