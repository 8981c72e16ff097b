package tenterbook.search.find;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.Term;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.StringHelper;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.question.QuestionReader;

/** The numbers of pieces in one view of the index. */
final class IndexedNumbers implements QuestionReader.Pieces {
    private static final Set<String> NUMBER = Set.of(PieceDocument.NUMBER);

    private final IndexSearcher searcher;

    IndexedNumbers(IndexSearcher searcher) {
        this.searcher = searcher;
    }

    @Override
    public List<String> numbered(String plain) {
        try {
            List<String> numbers = new ArrayList<>();
            for (ScoreDoc each : searcher.search(new TermQuery(new Term(PieceDocument.PLAIN, plain)), 2).scoreDocs) {
                numbers.add(searcher.storedFields().document(each.doc, NUMBER).get(PieceDocument.NUMBER));
            }
            return numbers;
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    @Override
    public boolean beginning(String plain) {
        try {
            BytesRef wanted = new BytesRef(plain);
            for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
                Terms terms = leaf.reader().terms(PieceDocument.PLAIN);
                TermsEnum each = terms == null ? null : terms.iterator();
                if (each != null
                        && each.seekCeil(wanted) != TermsEnum.SeekStatus.END
                        && StringHelper.startsWith(each.term(), wanted)) {
                    return true;
                }
            }
            return false;
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private static UncheckedIOException unreadable(IOException e) {
        return new UncheckedIOException("The search index cannot be read; rebuild it with ‘reindex’", e);
    }
}
