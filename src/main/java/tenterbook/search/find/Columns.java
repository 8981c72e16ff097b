package tenterbook.search.find;

import java.io.IOException;
import java.util.Arrays;
import org.apache.lucene.index.BinaryDocValues;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import tenterbook.piece.ColourRole;
import tenterbook.search.colour.ColourTree;
import tenterbook.search.facet.FacetColumn;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.index.PieceNumbers;

/**
 * The numbers, colours, and facet values of one segment's pieces, laid out in memory when the segment is opened, so that a
 * search of a hundred thousand pieces counts and compares without touching the index's files. About 500 bytes for each piece with
 * six colours.
 */
public final class Columns {
    /** Ranges as in {@link PieceNumbers}, by document. */
    final double[][] ranges;

    final FacetColumn facets;
    private final Packing colours;
    private final Packing pictures;
    private final Packing[] regions = new Packing[ColourRole.values().length];
    /** For each role the colours named so or, of pieces that have none, those of the cloth; made when first asked for. */
    private final ColourTree[] regionsOrCloth = new ColourTree[regions.length];

    Columns(LeafReader reader, FacetTerms terms) throws IOException {
        int documents = reader.maxDoc();
        ranges = new double[2 * PieceNumbers.RANGES][documents];
        for (double[] range : ranges) {
            Arrays.fill(range, Double.NaN);
        }
        colours = new Packing(documents);
        pictures = new Packing(documents);
        Arrays.setAll(regions, role -> new Packing(documents));
        BinaryDocValues numbers = DocValues.getBinary(reader, PieceDocument.NUMBERS);
        for (int doc = 0; doc < documents; doc++) {
            if (numbers.advanceExact(doc)) {
                PieceNumbers read = PieceNumbers.unpacked(numbers.binaryValue());
                for (int i = 0; i < ranges.length; i++) {
                    ranges[i][doc] = read.ranges()[i];
                }
                double[] each = read.colours();
                for (int i = 0; i < each.length; i += PieceNumbers.COLOUR) {
                    int role = (int) each[i + 4];
                    (role == PieceNumbers.PICTURE ? pictures : colours).add(each, i);
                    if (role >= 0 && role < regions.length) {
                        regions[role].add(each, i);
                    }
                }
            }
            colours.end(doc);
            pictures.end(doc);
            for (Packing region : regions) {
                region.end(doc);
            }
        }
        facets = FacetColumn.of(reader, terms);
    }

    /** All colours of the cloth, named or not. */
    ColourTree colours() {
        return colours.tree();
    }

    /** All colours named, and all of the whole photographs. */
    ColourTree pictures() {
        return pictures.tree();
    }

    /** Only the colours named as one part of the dyeing. */
    ColourTree regions(ColourRole role) {
        return regions[role.ordinal()].tree();
    }

    /** The colours named as one part of the dyeing; of pieces where nobody named that part, all colours of the cloth. */
    synchronized ColourTree regionsOrCloth(ColourRole role) {
        ColourTree made = regionsOrCloth[role.ordinal()];
        if (made == null) {
            made = ColourTree.firstOf(regions(role), colours());
            regionsOrCloth[role.ordinal()] = made;
        }
        return made;
    }

    /** Orders all colours for searching, so that the first search by colour need not. */
    void orderColours() {
        colours();
        pictures();
        for (ColourRole role : ColourRole.values()) {
            regions(role);
        }
    }

    /** Colours as they are read, document after document; ordered as a tree when they are first asked for. */
    private static final class Packing {
        private final int[] start;
        private double[] packed = new double[64];
        private ColourTree tree;
        private int used;

        Packing(int documents) {
            start = new int[documents + 1];
        }

        void add(double[] colours, int at) {
            if (used + 4 > packed.length) {
                packed = Arrays.copyOf(packed, 2 * packed.length);
            }
            System.arraycopy(colours, at, packed, used, 4);
            used += 4;
        }

        void end(int doc) {
            start[doc + 1] = used / 4;
        }

        synchronized ColourTree tree() {
            if (tree == null) {
                tree = new ColourTree(packed, start);
                packed = null;
            }
            return tree;
        }
    }
}
