package tenterbook.search.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.FilterCollector;
import org.apache.lucene.search.FilterLeafCollector;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.TopFieldCollector;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.TopFieldDocs;
import org.apache.lucene.util.FixedBitSet;

/** Keeps the best of the documents found already and passes over all others. Lucene still skips what cannot be among the best. */
final class OnlyHits implements CollectorManager<FilterCollector, TopFieldDocs> {
    private final FixedBitSet[] hits;
    private final TopFieldCollectorManager manager;
    private final List<TopFieldCollector> made = new ArrayList<>();

    /** @param hits by number of the segment; null for none */
    OnlyHits(FixedBitSet[] hits, int wanted) {
        this.hits = hits;
        this.manager = new TopFieldCollectorManager(Sorts.byScore(), wanted, null, wanted);
    }

    @Override
    public FilterCollector newCollector() throws IOException {
        TopFieldCollector top = manager.newCollector();
        made.add(top);
        return new FilterCollector(top) {
            @Override
            public LeafCollector getLeafCollector(LeafReaderContext leaf) throws IOException {
                FixedBitSet found = hits[leaf.ord];
                return new FilterLeafCollector(super.getLeafCollector(leaf)) {
                    @Override
                    public void collect(int doc) throws IOException {
                        if (found != null && found.get(doc)) {
                            in.collect(doc);
                        }
                    }
                };
            }
        };
    }

    @Override
    public TopFieldDocs reduce(Collection<FilterCollector> collectors) throws IOException {
        return manager.reduce(made);
    }
}
