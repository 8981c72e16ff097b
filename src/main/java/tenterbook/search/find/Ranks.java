package tenterbook.search.find;

import java.io.IOException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.function.LongUnaryOperator;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.util.FixedBitSet;
import org.apache.lucene.util.NumericUtils;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Order;

/** The rank of each of a segment's pieces in every order that does not depend on the search. Ties go by number. */
final class Ranks {
    private final Map<Order, int[]> ranks = new EnumMap<>(Order.class);

    private Ranks() {}

    static Ranks of(LeafReader reader) throws IOException {
        Ranks made = new Ranks();
        Map<String, long[]> read = new HashMap<>();
        long[] number = ords(reader, PieceDocument.SORT_NUMBER);
        for (Map.Entry<Order, Sorts.Key> each : Sorts.keys().entrySet()) {
            Sorts.Key key = each.getValue();
            long[] keys = read.get(key.field());
            if (keys == null) {
                keys = keys(reader, key);
                read.put(key.field(), keys);
            }
            made.put(each.getKey(), key.greatestFirst() ? reversed(keys) : keys, number);
        }
        return made;
    }

    private static long[] keys(LeafReader reader, Sorts.Key key) throws IOException {
        return switch (key.type()) {
            case STRING -> ords(reader, key.field());
            case LONG -> numbers(reader, key.field(), LongUnaryOperator.identity());
            default -> numbers(reader, key.field(), NumericUtils::sortableDoubleBits);
        };
    }

    private static long[] ords(LeafReader reader, String field) throws IOException {
        SortedDocValues terms = DocValues.getSorted(reader, field);
        long[] keys = new long[reader.maxDoc()];
        for (int doc = 0; doc < keys.length; doc++) {
            keys[doc] = terms.advanceExact(doc) ? terms.ordValue() : Long.MAX_VALUE;
        }
        return keys;
    }

    private static long[] numbers(LeafReader reader, String field, LongUnaryOperator key) throws IOException {
        NumericDocValues values = DocValues.getNumeric(reader, field);
        long[] keys = new long[reader.maxDoc()];
        for (int doc = 0; doc < keys.length; doc++) {
            keys[doc] = values.advanceExact(doc) ? key.applyAsLong(values.longValue()) : Long.MAX_VALUE;
        }
        return keys;
    }

    /** Greatest first, but a missing value still last. */
    private static long[] reversed(long[] keys) {
        return Arrays.stream(keys)
                .map(key -> key == Long.MAX_VALUE ? key : -key)
                .toArray();
    }

    private void put(Order order, long[] keys, long[] number) {
        long[] distinct = Arrays.stream(keys).sorted().distinct().toArray();
        long[] both = new long[keys.length];
        for (int doc = 0; doc < keys.length; doc++) {
            long tie = Math.min(number[doc], Integer.MAX_VALUE);
            both[doc] = (long) Arrays.binarySearch(distinct, keys[doc]) << 32 | tie;
        }
        long[] sorted = both.clone();
        Arrays.sort(sorted);
        int[] rank = new int[keys.length];
        for (int doc = 0; doc < keys.length; doc++) {
            rank[doc] = Arrays.binarySearch(sorted, both[doc]);
        }
        ranks.put(order, rank);
    }

    /** The first {@code wanted} of the documents in an order, by document number; all where they are not more. */
    int[] first(Order order, FixedBitSet documents, int wanted) {
        int[] rank = ranks.get(order);
        int[] heap = new int[Math.min(wanted, rank.length)];
        return new Lowest(rank, heap).of(documents);
    }

    /** A heap of the documents of lowest rank, the highest of them on top. */
    private static final class Lowest {
        private final int[] rank;
        private final int[] heap;
        private int size;

        Lowest(int[] rank, int[] heap) {
            this.rank = rank;
            this.heap = heap;
        }

        int[] of(FixedBitSet documents) {
            int length = documents.length();
            if (heap.length == 0 || length == 0) {
                return new int[0];
            }
            for (int doc = documents.nextSetBit(0); doc < length; ) {
                add(doc);
                doc = doc + 1 < length ? documents.nextSetBit(doc + 1) : Integer.MAX_VALUE;
            }
            int[] found = Arrays.copyOf(heap, size);
            Arrays.sort(found);
            return found;
        }

        private void add(int doc) {
            if (size < heap.length) {
                int at = size++;
                while (at > 0 && rank[heap[(at - 1) / 2]] < rank[doc]) {
                    heap[at] = heap[(at - 1) / 2];
                    at = (at - 1) / 2;
                }
                heap[at] = doc;
            } else if (rank[doc] < rank[heap[0]]) {
                sink(doc);
            }
        }

        private void sink(int doc) {
            int at = 0;
            for (int child = 1; child < size; child = 2 * at + 1) {
                if (child + 1 < size && rank[heap[child + 1]] > rank[heap[child]]) {
                    child++;
                }
                if (rank[heap[child]] <= rank[doc]) {
                    break;
                }
                heap[at] = heap[child];
                at = child;
            }
            heap[at] = doc;
        }
    }
}
