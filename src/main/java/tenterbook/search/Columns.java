package tenterbook.search;

import java.io.IOException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.apache.lucene.index.BinaryDocValues;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.SortedSetDocValues;

/**
 * The numbers and facet values of one segment's pieces, laid out in memory so that a search of a hundred thousand pieces
 * counts and compares without touching the index's files. About 250 bytes for each piece with six colours.
 */
final class Columns {
    /** Ranges as in {@link PieceNumbers}, by document. */
    final double[][] ranges;
    /** The colours of document d are those from {@code colourStart[d]} up to {@code colourStart[d + 1]}. */
    final int[] colourStart;

    final double[] lightness;
    final double[] a;
    final double[] b;
    final double[] chroma;
    final double[] share;
    final Map<Facet, Values> facets = new EnumMap<>(Facet.class);

    /**
     * The values of one facet.
     *
     * @param start as {@link #colourStart}
     * @param ordinals into {@code values}
     */
    record Values(int[] start, int[] ordinals, PieceFacets.Value[] values) {}

    Columns(LeafReader reader) throws IOException {
        int documents = reader.maxDoc();
        ranges = new double[2 * PieceNumbers.RANGES][documents];
        for (double[] range : ranges) {
            Arrays.fill(range, Double.NaN);
        }
        colourStart = new int[documents + 1];
        double[] packed = new double[Math.max(16, 4 * 6 * documents)];
        int used = 0;
        BinaryDocValues numbers = DocValues.getBinary(reader, PieceDocument.NUMBERS);
        for (int doc = 0; doc < documents; doc++) {
            colourStart[doc] = used / 4;
            if (numbers.advanceExact(doc)) {
                PieceNumbers read = PieceNumbers.unpacked(numbers.binaryValue());
                for (int i = 0; i < ranges.length; i++) {
                    ranges[i][doc] = read.ranges()[i];
                }
                double[] colours = read.colours();
                if (used + colours.length > packed.length) {
                    packed = Arrays.copyOf(packed, Math.max(used + colours.length, packed.length * 3 / 2));
                }
                System.arraycopy(colours, 0, packed, used, colours.length);
                used += colours.length;
            }
        }
        int colours = used / 4;
        colourStart[documents] = colours;
        lightness = new double[colours];
        a = new double[colours];
        b = new double[colours];
        chroma = new double[colours];
        share = new double[colours];
        for (int i = 0; i < colours; i++) {
            lightness[i] = packed[4 * i];
            a[i] = packed[4 * i + 1];
            b[i] = packed[4 * i + 2];
            chroma[i] = Math.sqrt(a[i] * a[i] + b[i] * b[i]);
            share[i] = packed[4 * i + 3];
        }
        for (Facet facet : Facet.values()) {
            facets.put(facet, values(reader, facet));
        }
    }

    private static Values values(LeafReader reader, Facet facet) throws IOException {
        SortedSetDocValues terms = DocValues.getSortedSet(reader, facet.field());
        int documents = reader.maxDoc();
        int[] start = new int[documents + 1];
        int[] ordinals = new int[Math.max(8, documents)];
        int used = 0;
        for (int doc = 0; doc < documents; doc++) {
            start[doc] = used;
            if (terms.advanceExact(doc)) {
                for (int i = 0; i < terms.docValueCount(); i++) {
                    if (used == ordinals.length) {
                        ordinals = Arrays.copyOf(ordinals, used * 3 / 2);
                    }
                    ordinals[used++] = (int) terms.nextOrd();
                }
            }
        }
        start[documents] = used;
        PieceFacets.Value[] values = new PieceFacets.Value[(int) terms.getValueCount()];
        for (int ord = 0; ord < values.length; ord++) {
            values[ord] = PieceFacets.Value.of(terms.lookupOrd(ord).utf8ToString());
        }
        return new Values(start, Arrays.copyOf(ordinals, used), values);
    }
}
