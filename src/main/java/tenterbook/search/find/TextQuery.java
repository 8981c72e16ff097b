package tenterbook.search.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.MultiTerms;
import org.apache.lucene.index.Term;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.FuzzyQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.MultiPhraseQuery;
import org.apache.lucene.search.PhraseQuery;
import org.apache.lucene.search.PrefixQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Letters;
import tenterbook.search.query.Stems;
import tenterbook.search.query.UserText;

/**
 * What was typed, as a Lucene query. Every part must be found somewhere in the record; titles, numbers and the names of
 * boards, cloths and dyes weigh more.
 */
public final class TextQuery {
    /** Which words match one that was typed. */
    enum Spelling {
        AS_TYPED,
        /** Also words one or two letters off. */
        SIMILAR
    }

    private static final float NUMBER = 8;
    private static final float TITLE = 4;
    private static final float NAME = 2;
    private static final float STEM = 0.4f;
    private static final float STARTS = 0.3f;
    private static final float RESPELT = 0.2f;
    private static final float ROW = 8;
    /** Words between those of a row, at most. */
    private static final int NEAR = 1;

    private static final int LONGEST_ROW = 6;
    private static final int MOST_ENDINGS = 512;

    private final UserText text;
    private final IndexSearcher searcher;
    private final IndexReader reader;
    private final boolean similar;
    /** Words near one typed, by field and word: finding them is expensive, and both queries need them. */
    private final Map<String, Query> near = new HashMap<>();
    /** Whether clauses that find nothing more but weigh what is found are wanted. */
    private boolean weighing;

    TextQuery(UserText text, IndexSearcher searcher, Spelling spelling) {
        this.text = text;
        this.searcher = searcher;
        this.reader = searcher.getIndexReader();
        this.similar = spelling == Spelling.SIMILAR;
    }

    /** Finds what was asked, without weighing it: titles, names and numbers are among all words, too. */
    Query matching() throws IOException {
        weighing = false;
        BooleanQuery.Builder all = new BooleanQuery.Builder();
        boolean wanted = false;
        for (UserText.Term part : text.parts()) {
            wanted |= !part.without();
            all.add(part(part), part.without() ? Occur.MUST_NOT : Occur.MUST);
        }
        if (!wanted) {
            all.add(new MatchAllDocsQuery(), Occur.MUST);
        }
        return all.build();
    }

    /**
     * Weighs what {@link #matching} found; finds other pieces too, which the collector skips, and may miss some found, which
     * then weigh nothing. One of the words is enough, which Lucene scores much faster than all of them.
     */
    Query weighing() throws IOException {
        weighing = true;
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        for (UserText.Term part : text.parts()) {
            if (!part.without()) {
                any.add(part(part), Occur.SHOULD);
            }
        }
        return any.build();
    }

    /**
     * Weighs pieces in which the words stand in one row, as in 'flat drawer 1', besides {@link #weighing}; empty where they cannot. Their
     * places are compared one by one, so it is for the best pieces only.
     */
    Optional<Query> row() {
        List<UserText.Term> wanted =
                text.parts().stream().filter(part -> !part.without()).toList();
        if (wanted.size() < 2 || wanted.size() > LONGEST_ROW || comparesPlaces()) {
            return Optional.empty();
        }
        String[] words = wanted.stream().map(part -> part.words().get(0)).toArray(String[]::new);
        return Optional.of(new BoostQuery(new PhraseQuery(NEAR, PieceDocument.ALL, words), ROW));
    }

    /** Whether {@link #weighing} compares places, which is worth doing only for what was found. */
    boolean comparesPlaces() {
        return text.parts().stream().anyMatch(part -> part.words().size() > 1);
    }

    private Query part(UserText.Term part) throws IOException {
        if (part.words().size() > 1) {
            return several(part);
        }
        String word = part.words().get(0);
        if (part.without()) {
            return term(PieceDocument.ALL, word);
        }
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        any.add(term(PieceDocument.ALL, word), Occur.SHOULD);
        if (!part.phrase()) {
            for (String stem : Stems.of(word)) {
                any.add(new BoostQuery(term(PieceDocument.ALL, stem), STEM), Occur.SHOULD);
            }
        }
        if (weighing) {
            any.add(new BoostQuery(term(PieceDocument.TITLE, word), TITLE), Occur.SHOULD);
            any.add(new BoostQuery(term(PieceDocument.NAMED, word), NAME), Occur.SHOULD);
            any.add(new BoostQuery(term(PieceDocument.NUMBER_WORDS, word), NUMBER), Occur.SHOULD);
        }
        any.add(new BoostQuery(new ConstantScoreQuery(term(PieceDocument.SQUASHED, word)), 4 * NUMBER), Occur.SHOULD);
        if (part.unfinished()) {
            if (!weighing || similar) {
                // Without similar words every piece found starts so, and equal weights for all change no order.
                any.add(starting(PieceDocument.ALL, word, STARTS), Occur.SHOULD);
            }
            if (weighing) {
                any.add(starting(PieceDocument.TITLE, word, STARTS * TITLE), Occur.SHOULD);
            }
        }
        int edits = similar && !part.phrase() ? Letters.edits(word) : 0;
        if (edits > 0) {
            any.add(near(PieceDocument.ALL, word, edits, RESPELT), Occur.SHOULD);
            any.add(near(PieceDocument.TITLE, word, edits, RESPELT * TITLE), Occur.SHOULD);
        }
        return any.build();
    }

    /** A quoted phrase, a number such as V24-001, or a run of Chinese or Japanese. */
    private Query several(UserText.Term part) throws IOException {
        List<String> words = part.words();
        BooleanQuery.Builder any = new BooleanQuery.Builder();
        any.add(phrase(PieceDocument.ALL, words, part.unfinished()), Occur.SHOULD);
        if (weighing || part.unfinished()) {
            // An unfinished phrase has so many endings at most; those of titles alone may be others.
            any.add(new BoostQuery(phrase(PieceDocument.TITLE, words, part.unfinished()), TITLE), Occur.SHOULD);
        }
        any.add(
                new BoostQuery(
                        new ConstantScoreQuery(term(PieceDocument.SQUASHED, String.join("", words))), 4 * NUMBER),
                Occur.SHOULD);
        if (similar && !part.phrase() && !part.without()) {
            BooleanQuery.Builder each = new BooleanQuery.Builder();
            for (String word : words) {
                each.add(
                        Letters.edits(word) == 0
                                ? term(PieceDocument.ALL, word)
                                : near(PieceDocument.ALL, word, Letters.edits(word), RESPELT),
                        Occur.MUST);
            }
            any.add(each.build(), Occur.SHOULD);
        }
        return any.build();
    }

    private Query phrase(String field, List<String> words, boolean unfinished) throws IOException {
        String last = words.get(words.size() - 1);
        List<Term> endings = unfinished ? endings(field, last) : List.of();
        if (endings.isEmpty()) {
            return new PhraseQuery(field, words.toArray(String[]::new));
        }
        MultiPhraseQuery.Builder phrase = new MultiPhraseQuery.Builder();
        for (String word : words.subList(0, words.size() - 1)) {
            phrase.add(new Term(field, word));
        }
        phrase.add(endings.toArray(Term[]::new));
        return phrase.build();
    }

    private List<Term> endings(String field, String start) throws IOException {
        List<Term> endings = new ArrayList<>();
        Terms terms = MultiTerms.getTerms(reader, field);
        if (terms == null) {
            return endings;
        }
        TermsEnum each = terms.iterator();
        BytesRef prefix = new BytesRef(start);
        for (var seek = each.seekCeil(prefix); seek != TermsEnum.SeekStatus.END && endings.size() < MOST_ENDINGS; ) {
            BytesRef term = each.term();
            if (!org.apache.lucene.util.StringHelper.startsWith(term, prefix)) {
                break;
            }
            endings.add(new Term(field, BytesRef.deepCopyOf(term)));
            seek = each.next() == null ? TermsEnum.SeekStatus.END : TermsEnum.SeekStatus.FOUND;
        }
        return endings;
    }

    private Query near(String field, String word, int edits, float boost) throws IOException {
        Query found = near.get(field + ' ' + word);
        if (found == null) {
            found = searcher.rewrite(new FuzzyQuery(new Term(field, word), edits, 0, 40, true));
            near.put(field + ' ' + word, found);
        }
        return new BoostQuery(found, boost);
    }

    private static Query starting(String field, String word, float boost) {
        return new BoostQuery(new ConstantScoreQuery(new PrefixQuery(new Term(field, word))), boost);
    }

    private static Query term(String field, String word) {
        return new TermQuery(new Term(field, word));
    }
}
