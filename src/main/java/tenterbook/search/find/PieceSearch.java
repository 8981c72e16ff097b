package tenterbook.search.find;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.index.Term;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.StringHelper;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.index.Cards;
import tenterbook.search.index.PieceCard;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.UserText;
import tenterbook.search.question.QuestionReader;
import tenterbook.search.question.Reading;
import tenterbook.words.Message;

/** One search over one unchanging view of the index. */
public final class PieceSearch {
    private static final Set<String> TEXT = Set.of(PieceDocument.PASSAGES);
    private final IndexSearcher searcher;
    private final ColumnCache columns;

    public PieceSearch(IndexSearcher searcher, ColumnCache columns) {
        this.searcher = searcher;
        this.columns = columns;
    }

    /** @param today the day from which 'last year' is counted; asked for only by such words */
    public SearchResult run(PieceQuery query, Supplier<LocalDate> today, long startedNanos, long behind)
            throws IOException {
        Reading reading = reading(query.text(), today);
        ColourSearch colours = query.colours().any() ? ColourSearch.of(query.colours(), searcher, columns) : null;
        Answer answer = answer(query, reading, colours);
        UserText text = answer.text();
        int wanted = (int) Math.min(answer.found().total(), (long) query.page() * query.size());
        boolean beyond =
                (long) (query.page() - 1) * query.size() >= answer.found().total();
        int[] page = page(query, beyond ? new int[0] : ordered(query, answer, colours, wanted));
        List<Hit> hits = hits(page, colours, text.empty() ? null : new Snippets(text, answer.respelt()));
        List<FacetGroup> facets = answer.found().tally().groups(query);
        long micros = (System.nanoTime() - startedNanos) / 1000;
        return new SearchResult(
                answer.found().total(),
                hits,
                facets,
                query,
                micros,
                answer.respelt(),
                behind,
                note(query, colours),
                reading.facts(),
                answer.leftOut());
    }

    /** How many pieces a search finds. */
    public long count(PieceQuery query, Supplier<LocalDate> today) throws IOException {
        ColourSearch colours = query.colours().any() ? ColourSearch.of(query.colours(), searcher, columns) : null;
        return answer(query, reading(query.text(), today), colours).found().total();
    }

    /** The numbers of the pieces that a search finds, in its order, whatever its page. */
    public FoundNumbers numbers(PieceQuery query, Supplier<LocalDate> today, int most, long behind) throws IOException {
        ColourSearch colours = query.colours().any() ? ColourSearch.of(query.colours(), searcher, columns) : null;
        Answer answer = answer(query, reading(query.text(), today), colours);
        long total = answer.found().total();
        List<String> numbers = new ArrayList<>();
        for (int doc : ordered(query, answer, colours, (int) Math.min(total, most))) {
            numbers.add(Cards.read(searcher.getIndexReader(), doc).number());
        }
        return new FoundNumbers(numbers, total, behind);
    }

    private Reading reading(String typed, Supplier<LocalDate> today) {
        if (typed.isEmpty()) {
            return Reading.NOTHING;
        }
        return new QuestionReader(columns.lexicon(), plain -> holds(plain, false), plain -> holds(plain, true), today)
                .read(typed);
    }

    /** Whether a piece has a number that may be shortened to this, or one that begins with it. */
    private boolean holds(String plain, boolean beginning) {
        try {
            BytesRef wanted = new BytesRef(plain);
            for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
                Terms terms = leaf.reader().terms(PieceDocument.PLAIN);
                TermsEnum each = terms == null ? null : terms.iterator();
                if (each == null) {
                    continue;
                }
                TermsEnum.SeekStatus found = each.seekCeil(wanted);
                if (found == TermsEnum.SeekStatus.FOUND
                        || beginning
                                && found == TermsEnum.SeekStatus.NOT_FOUND
                                && StringHelper.startsWith(each.term(), wanted)) {
                    return true;
                }
            }
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException("The search index cannot be read; rebuild it with ‘reindex’", e);
        }
    }

    /**
     * What was found, and by which words.
     *
     * @param words null where only facts were asked for
     */
    private record Answer(
            Reading reading, Scan.Found found, UserText text, TextQuery words, boolean respelt, List<String> leftOut) {}

    /**
     * By all words as they are typed, else all words with other spellings, else as many words as some piece has together with the
     * facts, in the order in which they are typed. Facts are never left out.
     */
    private Answer answer(PieceQuery query, Reading reading, ColourSearch colours) throws IOException {
        UserText text = reading.words();
        Answer exact = answer(query, reading, text, colours, false);
        if (exact.found().total() > 0 || text.empty()) {
            return exact;
        }
        if (mayBeRespelt(text)) {
            Answer near = answer(query, reading, text, colours, true);
            if (near.found().total() > 0) {
                return near;
            }
        }
        return some(query, reading, colours, exact);
    }

    private Answer some(PieceQuery query, Reading reading, ColourSearch colours, Answer none) throws IOException {
        List<UserText.Term> kept = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        Answer best = none;
        for (UserText.Term part : reading.words().parts()) {
            kept.add(part);
            Answer tried = answer(query, reading, new UserText(List.copyOf(kept)), colours, false);
            if (tried.found().total() == 0) {
                kept.remove(kept.size() - 1);
                leftOut.add(String.join(" ", part.words()));
            } else {
                best = tried;
            }
        }
        if (kept.isEmpty() && !reading.facts().isEmpty()) {
            best = answer(query, reading, UserText.NONE, colours, false);
        }
        return best.found().total() == 0
                ? none
                : new Answer(reading, best.found(), best.text(), best.words(), false, List.copyOf(leftOut));
    }

    private Answer answer(PieceQuery query, Reading reading, UserText text, ColourSearch colours, boolean respelt)
            throws IOException {
        TextQuery words = text.empty()
                ? null
                : new TextQuery(text, searcher, respelt ? TextQuery.Spelling.SIMILAR : TextQuery.Spelling.AS_TYPED);
        Query matching = withNumbers(words == null ? null : words.matching(), reading);
        Scan.Found found = Scan.of(query, reading.constraints(), matching, colours, searcher, columns);
        return new Answer(reading, found, text, words, respelt, List.of());
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

    private static String note(PieceQuery query, ColourSearch colours) {
        return colours == null || !colours.lacksPalette()
                ? ""
                : Message.of("search.no-palette", "piece", query.colours().like())
                        .inEnglish();
    }

    private static boolean mayBeRespelt(UserText text) {
        return text.parts().stream()
                .anyMatch(part -> !part.without()
                        && !part.phrase()
                        && part.words().stream().anyMatch(word -> TextQuery.edits(word) > 0));
    }

    private int[] ordered(PieceQuery query, Answer answer, ColourSearch colours, int wanted) throws IOException {
        if (wanted == 0) {
            return new int[0];
        }
        Ordering ordering = new Ordering(searcher, columns, answer.found().hits(), wanted);
        return switch (query.order()) {
            case COLOUR -> ordering.byColour(colours);
            case RELEVANCE -> answered(ordering, answer);
            default -> ordering.by(query.order());
        };
    }

    /** By the words, else in the order that the question asks for, else nearest to its number first, else newest first. */
    private int[] answered(Ordering ordering, Answer answer) throws IOException {
        Reading reading = answer.reading();
        if (reading.order() != null) {
            return ordering.by(reading.order());
        }
        if (answer.words() != null) {
            return ordering.byWords(answer.words());
        }
        for (Constraint each : reading.constraints()) {
            if (each instanceof Constraint.OfNumber number && !number.not() && number.bounded()) {
                return ordering.byNearness(number);
            }
        }
        return reading.weighing().empty()
                ? ordering.by(Order.NEWEST)
                : ordering.byWords(new TextQuery(reading.weighing(), searcher, TextQuery.Spelling.AS_TYPED));
    }

    private static int[] page(PieceQuery query, int[] ordered) {
        long from = (long) (query.page() - 1) * query.size();
        return java.util.Arrays.stream(ordered).skip(from).limit(query.size()).toArray();
    }

    /** @param snippets null where no words were asked for */
    private List<Hit> hits(int[] page, ColourSearch colours, Snippets snippets) throws IOException {
        List<Hit> hits = new ArrayList<>();
        StoredFields stored = searcher.storedFields();
        for (int doc : page) {
            PieceCard card = Cards.read(searcher.getIndexReader(), doc);
            List<String> why = snippets == null
                    ? List.of()
                    : snippets.of(Cards.passages(stored.document(doc, TEXT).getBinaryValue(PieceDocument.PASSAGES)));
            hits.add(colours == null ? new Hit(card, null, null, null, why) : coloured(card, colours, doc, why));
        }
        return hits;
    }

    private Hit coloured(PieceCard card, ColourSearch colours, int doc, List<String> why) {
        List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
        LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc, leaves));
        return colours.hit(card, columns.of(leaf.reader()), doc - leaf.docBase, why);
    }

    public List<PieceCard> byBoard(String board, int from, int size) throws IOException {
        var query = new TermQuery(new Term(PieceDocument.BOARD, board));
        int all = Math.max(1, searcher.getIndexReader().maxDoc());
        int wanted = (int) Math.min(all, (long) from + size);
        if (from >= all || wanted == 0) {
            return List.of();
        }
        ScoreDoc[] top = searcher.search(query, wanted, Sorts.of(Order.OLDEST)).scoreDocs;
        List<PieceCard> cards = new ArrayList<>();
        for (int i = from; i < top.length; i++) {
            cards.add(Cards.read(searcher.getIndexReader(), top[i].doc));
        }
        return cards;
    }

    public int countByBoard(String board) throws IOException {
        return searcher.count(new TermQuery(new Term(PieceDocument.BOARD, board)));
    }
}
