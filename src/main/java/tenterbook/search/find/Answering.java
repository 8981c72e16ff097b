package tenterbook.search.find;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermQuery;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Letters;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.Stems;
import tenterbook.search.query.UserText;
import tenterbook.search.question.QuestionReader;
import tenterbook.search.question.Reading;
import tenterbook.words.Message;

/** By which reading and which words a question is answered. */
final class Answering {
    private final PieceQuery query;
    private final QuestionReader reader;
    private final ColourSearch colours;
    private final IndexSearcher searcher;
    private final ColumnCache columns;

    /** @param colours null where none are asked for */
    Answering(
            PieceQuery query,
            QuestionReader reader,
            ColourSearch colours,
            IndexSearcher searcher,
            ColumnCache columns) {
        this.query = query;
        this.reader = reader;
        this.colours = colours;
        this.searcher = searcher;
        this.columns = columns;
    }

    /**
     * What was found, and by which words.
     *
     * @param words null where only facts were asked for
     * @param remarks those of the reading, and what the index adds to them
     */
    record Answer(
            Reading reading,
            Scan.Found found,
            UserText text,
            TextQuery words,
            boolean respelt,
            List<String> leftOut,
            List<Message> remarks) {
        Answer corrected(Message remark) {
            return new Answer(reading, found, text, words, true, leftOut, remarks).with(List.of(remark));
        }

        Answer with(List<Message> more) {
            List<Message> all = new ArrayList<>(remarks);
            all.addAll(more);
            return new Answer(reading, found, text, words, respelt, leftOut, List.copyOf(all));
        }
    }

    /**
     * By all words as they are typed, else with a misspelt fact corrected, else by all words with other spellings, else by as many words
     * as some piece has together with the facts, in the order in which they are typed. Facts are never left out.
     */
    Answer answer() throws IOException {
        Reading reading = query.text().isEmpty() ? Reading.NOTHING : reader.read(query.text());
        Answer found = found(reading);
        return found.with(remarks(found));
    }

    private Answer found(Reading reading) throws IOException {
        UserText text = reading.words();
        Answer exact = by(reading, text, false);
        if (exact.found().total() > 0 || text.empty()) {
            return exact;
        }
        Optional<QuestionReader.Corrected> corrected = reader.corrected(query.text(), this::written);
        if (corrected.isPresent()) {
            Answer near =
                    by(corrected.get().reading(), corrected.get().reading().words(), false);
            if (near.found().total() > 0) {
                return near.corrected(corrected.get().remark());
            }
        }
        if (mayBeRespelt(text)) {
            Answer near = by(reading, text, true);
            if (near.found().total() > 0) {
                return near;
            }
        }
        return some(reading, exact);
    }

    private Answer some(Reading reading, Answer none) throws IOException {
        List<UserText.Term> kept = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        Answer best = none;
        for (UserText.Term part : reading.words().parts()) {
            kept.add(part);
            Answer tried = by(reading, new UserText(List.copyOf(kept)), false);
            if (tried.found().total() == 0) {
                kept.remove(kept.size() - 1);
                leftOut.add(String.join(" ", part.words()));
            } else {
                best = tried;
            }
        }
        if (kept.isEmpty() && !reading.constraints().isEmpty()) {
            best = by(reading, UserText.NONE, false);
        }
        return best.found().total() == 0
                ? none
                : new Answer(
                        reading,
                        best.found(),
                        best.text(),
                        best.words(),
                        false,
                        List.copyOf(leftOut),
                        reading.remarks());
    }

    /** On words that no piece has: those that were to be left out, and those looked for where nothing was found. */
    private List<Message> remarks(Answer answer) {
        List<Message> remarks = new ArrayList<>();
        List<String> nowhere = new ArrayList<>();
        for (UserText.Term part : answer.reading().words().parts()) {
            String words = String.join(" ", part.words());
            if (part.words().stream().allMatch(this::written)) {
                continue;
            }
            if (part.without()) {
                remarks.add(Message.of("question.none-has", "word", words));
            } else {
                nowhere.add(words);
            }
        }
        if (answer.found().total() == 0 && !nowhere.isEmpty()) {
            remarks.add(Message.of("question.nowhere", "count", nowhere.size(), "words", String.join(", ", nowhere)));
        }
        return remarks;
    }

    /** Whether a piece has this word, or another form of it. */
    private boolean written(String word) {
        try {
            int pieces = searcher.getIndexReader().docFreq(new Term(PieceDocument.ALL, word));
            for (String stem : Stems.of(word)) {
                pieces += searcher.getIndexReader().docFreq(new Term(PieceDocument.ALL, stem));
            }
            return pieces > 0;
        } catch (IOException e) {
            throw new UncheckedIOException("The search index cannot be read; rebuild it with ‘reindex’", e);
        }
    }

    private Answer by(Reading reading, UserText text, boolean respelt) throws IOException {
        TextQuery words = text.empty()
                ? null
                : new TextQuery(text, searcher, respelt ? TextQuery.Spelling.SIMILAR : TextQuery.Spelling.AS_TYPED);
        Query matching = withNumbers(words == null ? null : words.matching(), reading);
        Scan.Found found = Scan.of(query, reading.constraints(), matching, colours, searcher, columns);
        return new Answer(reading, found, text, words, respelt, List.of(), reading.remarks());
    }

    /** Numbers of pieces are found as words are; several mean any of them. */
    private static Query withNumbers(Query words, Reading reading) {
        BooleanQuery.Builder numbers = new BooleanQuery.Builder();
        BooleanQuery.Builder all = new BooleanQuery.Builder();
        boolean asked = false;
        boolean denied = false;
        for (Constraint each : reading.constraints()) {
            if (each instanceof Constraint.OfPieceNumber number) {
                Query one = new TermQuery(new Term(PieceDocument.PLAIN, number.plain()));
                if (number.not()) {
                    all.add(one, Occur.MUST_NOT);
                    denied = true;
                } else {
                    numbers.add(one, Occur.SHOULD);
                    asked = true;
                }
            }
        }
        if (!asked && !denied) {
            return words;
        }
        all.add(words == null ? new MatchAllDocsQuery() : words, Occur.MUST);
        if (asked) {
            all.add(numbers.build(), Occur.FILTER);
        }
        return all.build();
    }

    private static boolean mayBeRespelt(UserText text) {
        return text.parts().stream()
                .anyMatch(part -> !part.without()
                        && !part.phrase()
                        && part.words().stream().anyMatch(word -> Letters.edits(word) > 0));
    }
}
