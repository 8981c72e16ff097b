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
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.UserText;
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

    public SearchResult run(PieceQuery query, long startedNanos, long behind) throws IOException {
        UserText text = UserText.read(query.text());
        ColourSearch colours = query.colours().any() ? ColourSearch.of(query.colours(), searcher, columns) : null;
        TextQuery words = text.empty() ? null : new TextQuery(text, searcher, TextQuery.Spelling.AS_TYPED);
        Scan.Found found = scan(query, words, colours);
        boolean respelt = false;
        if (found.total() == 0 && mayBeRespelt(text)) {
            TextQuery near = new TextQuery(text, searcher, TextQuery.Spelling.SIMILAR);
            Scan.Found other = scan(query, near, colours);
            respelt = other.total() > 0;
            found = respelt ? other : found;
            words = respelt ? near : words;
        }
        int[] page = page(query, ordered(query, words, colours, found));
        List<Hit> hits = hits(page, colours, text.empty() ? null : new Snippets(text, respelt));
        List<FacetGroup> facets = found.tally().groups(query);
        long micros = (System.nanoTime() - startedNanos) / 1000;
        return new SearchResult(found.total(), hits, facets, query, micros, respelt, behind, note(query, colours));
    }

    private static String note(PieceQuery query, ColourSearch colours) {
        return colours == null || !colours.lacksPalette()
                ? ""
                : Message.of("search.no-palette", "piece", query.colours().like())
                        .inEnglish();
    }

    private Scan.Found scan(PieceQuery query, TextQuery words, ColourSearch colours) throws IOException {
        return Scan.of(query, words == null ? null : words.matching(), colours, searcher, columns);
    }

    private static boolean mayBeRespelt(UserText text) {
        return text.parts().stream()
                .anyMatch(part -> !part.without()
                        && !part.phrase()
                        && part.words().stream().anyMatch(word -> TextQuery.edits(word) > 0));
    }

    private int[] ordered(PieceQuery query, TextQuery words, ColourSearch colours, Scan.Found found)
            throws IOException {
        int wanted = (int) Math.min(found.total(), (long) query.page() * query.size());
        if (wanted == 0 || (long) (query.page() - 1) * query.size() >= found.total()) {
            return new int[0];
        }
        Ordering ordering = new Ordering(searcher, columns, found.hits(), wanted);
        return switch (query.order()) {
            case COLOUR -> ordering.byColour(colours);
            case RELEVANCE -> words == null ? ordering.by(Order.NUMBER) : ordering.byWords(words);
            default -> ordering.by(query.order());
        };
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
