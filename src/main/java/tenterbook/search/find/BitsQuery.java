package tenterbook.search.find;

import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.ConstantScoreScorer;
import org.apache.lucene.search.ConstantScoreWeight;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.QueryVisitor;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.Scorer;
import org.apache.lucene.search.Weight;
import org.apache.lucene.util.BitSetIterator;
import org.apache.lucene.util.FixedBitSet;

/** Documents found already, by segment, as a filter for scoring words. Never cached: no two are equal. */
final class BitsQuery extends Query {
    private final FixedBitSet[] documents;

    /** @param documents by number of the segment; null for none */
    BitsQuery(FixedBitSet[] documents) {
        this.documents = documents;
    }

    @Override
    public Weight createWeight(IndexSearcher searcher, ScoreMode mode, float boost) {
        return new ConstantScoreWeight(this, boost) {
            @Override
            public Scorer scorer(LeafReaderContext leaf) {
                FixedBitSet found = documents[leaf.ord];
                return found == null
                        ? null
                        : new ConstantScoreScorer(this, score(), mode, new BitSetIterator(found, found.cardinality()));
            }

            @Override
            public boolean isCacheable(LeafReaderContext leaf) {
                return false;
            }
        };
    }

    @Override
    public String toString(String field) {
        return "documents found";
    }

    @Override
    public void visit(QueryVisitor visitor) {
        visitor.visitLeaf(this);
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
