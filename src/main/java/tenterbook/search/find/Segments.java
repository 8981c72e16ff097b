package tenterbook.search.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.index.LeafReaderContext;

/** Work on every segment of an index; those of a large one side by side, on as many processors as there are. */
public final class Segments {
    /** With fewer documents one thread is done before a second one has started. */
    private static final int LARGE = 20_000;

    private Segments() {}

    /** Work on one segment; it shares nothing with the others but what is safe to share. */
    @FunctionalInterface
    public interface Work<R> {
        R on(LeafReaderContext leaf) throws IOException;
    }

    /** @return what came of each, in the segments' order */
    public static <R> List<R> each(List<LeafReaderContext> leaves, Work<R> work) throws IOException {
        long documents =
                leaves.stream().mapToLong(leaf -> leaf.reader().maxDoc()).sum();
        List<R> results = new ArrayList<>();
        if (leaves.size() < 2 || documents < LARGE) {
            for (LeafReaderContext leaf : leaves) {
                results.add(work.on(leaf));
            }
            return results;
        }
        try {
            leaves.parallelStream().map(leaf -> unchecked(leaf, work)).forEachOrdered(results::add);
            return results;
        } catch (Failed e) {
            throw e.why;
        }
    }

    /** Carries a fault out of a stream; of no use elsewhere. */
    private static final class Failed extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final transient IOException why;

        Failed(IOException why) {
            super(why);
            this.why = why;
        }
    }

    private static <R> R unchecked(LeafReaderContext leaf, Work<R> work) {
        try {
            return work.on(leaf);
        } catch (IOException e) {
            throw new Failed(e);
        }
    }
}
