package tenterbook.search.facet;

import java.io.IOException;
import java.util.Arrays;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.SortedSetDocValues;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.query.Facet;

/**
 * The facet values of one segment's pieces, of all facets side by side, as numbers of {@link FacetTerms}.
 *
 * @param start the values of document d are those from {@code start[d]} up to {@code start[d + 1]}
 * @param values by document, then by facet
 * @param present every value of the segment, once
 * @param whole how often each of {@code present} occurs, deleted entries included
 */
public record FacetColumn(int[] start, int[] values, int[] present, int[] whole) {

    public static FacetColumn of(LeafReader reader, FacetTerms terms) throws IOException {
        Facet[] facets = terms.facets().toArray(new Facet[0]);
        SortedSetDocValues[] columns = new SortedSetDocValues[facets.length];
        int[][] numbers = new int[facets.length][];
        int most = 0;
        for (int f = 0; f < facets.length; f++) {
            columns[f] = DocValues.getSortedSet(reader, facets[f].field());
            numbers[f] = new int[(int) columns[f].getValueCount()];
            for (int ord = 0; ord < numbers[f].length; ord++) {
                numbers[f][ord] =
                        terms.number(facets[f], columns[f].lookupOrd(ord).utf8ToString());
                most = Math.max(most, numbers[f][ord]);
            }
        }
        int documents = reader.maxDoc();
        int[] start = new int[documents + 1];
        int[] values = new int[Math.max(16, 12 * documents)];
        int[] sums = new int[most + 1];
        int used = 0;
        for (int doc = 0; doc < documents; doc++) {
            for (int f = 0; f < facets.length; f++) {
                int count = columns[f].advanceExact(doc) ? columns[f].docValueCount() : 0;
                for (int i = 0; i < count; i++) {
                    if (used == values.length) {
                        values = Arrays.copyOf(values, used * 3 / 2);
                    }
                    int value = numbers[f][(int) columns[f].nextOrd()];
                    sums[value]++;
                    values[used++] = value;
                }
            }
            start[doc + 1] = used;
        }
        int[] present = java.util.stream.IntStream.range(0, sums.length)
                .filter(value -> sums[value] > 0)
                .toArray();
        int[] whole = Arrays.stream(present).map(value -> sums[value]).toArray();
        return new FacetColumn(start, Arrays.copyOf(values, used), present, whole);
    }

    /** Adds the values of the documents to counts; where they are most of the segment, by taking the others from the whole. */
    public void count(FixedBitSet documents, int[] counts) {
        int length = documents.length();
        if (2L * documents.cardinality() <= length) {
            add(documents, counts, 1);
            return;
        }
        for (int i = 0; i < present.length; i++) {
            counts[present[i]] += whole[i];
        }
        FixedBitSet others = documents.clone();
        others.flip(0, length);
        add(others, counts, -1);
    }

    private void add(FixedBitSet documents, int[] counts, int by) {
        int length = documents.length();
        for (int doc = documents.nextSetBit(0); doc < length; ) {
            int end = start[doc + 1];
            for (int i = start[doc]; i < end; i++) {
                counts[values[i]] += by;
            }
            doc = doc + 1 < length ? documents.nextSetBit(doc + 1) : Integer.MAX_VALUE;
        }
    }
}
