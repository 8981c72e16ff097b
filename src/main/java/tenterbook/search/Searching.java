package tenterbook.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import tenterbook.colour.Lab;

/** One search over one unchanging view of the index. */
final class Searching {
    private static final Set<String> CARD = Set.of(PieceDocument.CARD);
    private static final Set<String> CARD_AND_TEXT = Set.of(PieceDocument.CARD, PieceDocument.PASSAGES);
    private final IndexSearcher searcher;
    private final ColumnCache columns;

    Searching(IndexSearcher searcher, ColumnCache columns) {
        this.searcher = searcher;
        this.columns = columns;
    }

    SearchResult run(PieceQuery query, long startedNanos, long behind) throws IOException {
        UserText text = UserText.read(query.text());
        Scan.Found found = scan(query, text, false);
        boolean respelt = false;
        if (found.total() == 0 && mayBeRespelt(text)) {
            Scan.Found other = scan(query, text, true);
            respelt = other.total() > 0;
            found = respelt ? other : found;
        }
        List<Hit> hits = hits(query, found.top().scoreDocs, new Snippets(text, respelt), !text.empty());
        List<FacetGroup> facets = found.tally().groups(query);
        long micros = (System.nanoTime() - startedNanos) / 1000;
        return new SearchResult(found.total(), hits, facets, query, micros, respelt, behind);
    }

    private Scan.Found scan(PieceQuery query, UserText text, boolean respelt) throws IOException {
        Query words = text.empty() ? null : TextQuery.of(text, searcher.getIndexReader(), respelt);
        return Scan.of(query, words, searcher, columns);
    }

    private static boolean mayBeRespelt(UserText text) {
        return text.parts().stream()
                .anyMatch(part -> !part.without()
                        && !part.phrase()
                        && part.words().stream().anyMatch(word -> TextQuery.edits(word) > 0));
    }

    private List<Hit> hits(PieceQuery query, ScoreDoc[] top, Snippets snippets, boolean words) throws IOException {
        List<Hit> hits = new ArrayList<>();
        StoredFields stored = searcher.storedFields();
        ColourMatch match =
                query.colour() == null ? null : new ColourMatch(query.colour(), query.within(), query.share(), false);
        long from = (long) (query.page() - 1) * query.size();
        for (long i = from; i < Math.min(top.length, from + query.size()); i++) {
            int doc = top[(int) i].doc;
            Document entry = stored.document(doc, words ? CARD_AND_TEXT : CARD);
            PieceCard card = Cards.card(entry.getBinaryValue(PieceDocument.CARD));
            List<String> why =
                    words ? snippets.of(Cards.passages(entry.getBinaryValue(PieceDocument.PASSAGES))) : List.of();
            hits.add(match == null ? new Hit(card, null, null, null, why) : coloured(card, match, doc, why));
        }
        return hits;
    }

    private Hit coloured(PieceCard card, ColourMatch match, int doc, List<String> why) {
        List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
        LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc, leaves));
        Columns of = columns.of(leaf.reader());
        match.whole(of, doc - leaf.docBase);
        Lab nearest = new Lab(of.lightness[match.nearest], of.a[match.nearest], of.b[match.nearest]);
        return new Hit(card, match.distance, Double.isNaN(match.share) ? null : match.share, nearest, why);
    }

    List<PieceCard> byBoard(String board) throws IOException {
        var query = new TermQuery(new org.apache.lucene.index.Term(PieceDocument.BOARD, board));
        var top = searcher.search(query, Math.max(1, searcher.getIndexReader().maxDoc()), Sorts.of(Order.OLDEST));
        StoredFields stored = searcher.storedFields();
        List<PieceCard> cards = new ArrayList<>();
        for (ScoreDoc each : top.scoreDocs) {
            cards.add(Cards.card(stored.document(each.doc, CARD).getBinaryValue(PieceDocument.CARD)));
        }
        return cards;
    }
}
