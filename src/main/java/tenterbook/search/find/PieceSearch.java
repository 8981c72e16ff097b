package tenterbook.search.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
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

    /** @param background what questions are read with besides the archive's names */
    public SearchResult run(PieceQuery query, QuestionReader.Background background, long startedNanos, long behind)
            throws IOException {
        ColourSearch colours = colours(query);
        Answering.Answer answer = answering(query, background, colours).answer();
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
                answer.reading().facts(),
                answer.leftOut(),
                answer.reading().offers(),
                answer.remarks());
    }

    /** How many pieces a search finds. */
    public long count(PieceQuery query, QuestionReader.Background background) throws IOException {
        return answering(query, background, colours(query)).answer().found().total();
    }

    /** The numbers of the pieces that a search finds, in its order, whatever its page. */
    public FoundNumbers numbers(PieceQuery query, QuestionReader.Background background, int most, long behind)
            throws IOException {
        ColourSearch colours = colours(query);
        Answering.Answer answer = answering(query, background, colours).answer();
        long total = answer.found().total();
        List<String> numbers = new ArrayList<>();
        for (int doc : ordered(query, answer, colours, (int) Math.min(total, most))) {
            numbers.add(Cards.read(searcher.getIndexReader(), doc).number());
        }
        return new FoundNumbers(numbers, total, behind);
    }

    private Answering answering(PieceQuery query, QuestionReader.Background background, ColourSearch colours) {
        return new Answering(query, reader(background), colours, searcher, columns);
    }

    /** Null where no colours are asked for. */
    private ColourSearch colours(PieceQuery query) throws IOException {
        return query.colours().any() ? ColourSearch.of(query.colours(), searcher, columns) : null;
    }

    public QuestionReader reader(QuestionReader.Background background) {
        return new QuestionReader(columns.lexicon(), new IndexedNumbers(searcher), background);
    }

    private static String note(PieceQuery query, ColourSearch colours) {
        return colours == null || !colours.lacksPalette()
                ? ""
                : Message.of("search.no-palette", "piece", query.colours().like())
                        .inEnglish();
    }

    /** @param wanted at most so many, 0 for none */
    private int[] ordered(PieceQuery query, Answering.Answer answer, ColourSearch colours, int wanted)
            throws IOException {
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
    private int[] answered(Ordering ordering, Answering.Answer answer) throws IOException {
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
