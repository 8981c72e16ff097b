package tenterbook.search.find;

import java.io.IOException;
import java.util.List;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.colour.ColourMatch;
import tenterbook.search.colour.ColourRangeSearch;
import tenterbook.search.colour.ColourTree;
import tenterbook.search.colour.NearestDistances;
import tenterbook.search.colour.NearestPalettes;
import tenterbook.search.colour.PaletteDistance;
import tenterbook.search.index.PieceCard;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.ColourChoice;

/** What a search asks of colours, segment by segment: which documents fit, and how far each is. One thread. */
final class ColourSearch {
    /** So few documents are compared one by one rather than found in the tree. */
    private static final int FEW = 400;

    private final ColourChoice choice;
    private final List<ColourChoice.Ask> asks;
    private final ColourMatch[] matches;
    private final String likeNumber;
    private final PaletteDistance palette;
    /** Shares count for colours asked for anywhere. */
    private double worst;

    private int worstAsk;

    private ColourSearch(ColourChoice choice, PaletteDistance palette) {
        this.choice = choice;
        this.asks = choice.asks();
        this.matches = asks.stream()
                .map(ask -> new ColourMatch(ask.colour(), choice.limit()))
                .toArray(ColourMatch[]::new);
        this.likeNumber = choice.like();
        this.palette = palette;
    }

    static ColourSearch of(ColourChoice choice, IndexSearcher searcher, ColumnCache cache) throws IOException {
        if (choice.like().isEmpty()) {
            return new ColourSearch(choice, null);
        }
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            int doc = document(leaf, choice.like());
            if (doc >= 0) {
                double[] colours = PaletteDistance.of(cache.of(leaf.reader()).colours(), doc);
                return new ColourSearch(choice, colours.length == 0 ? null : new PaletteDistance(colours));
            }
        }
        return new ColourSearch(choice, null);
    }

    /** The same search for another thread. */
    ColourSearch another() {
        return new ColourSearch(choice, palette == null ? null : palette.another());
    }

    /** Whether it asks for a palette that is not there to compare with. */
    boolean lacksPalette() {
        return !likeNumber.isEmpty() && palette == null;
    }

    private static int document(LeafReaderContext leaf, String number) throws IOException {
        PostingsEnum found = leaf.reader().postings(PieceDocument.key(number), PostingsEnum.NONE);
        Bits live = leaf.reader().getLiveDocs();
        if (found != null) {
            for (int doc = found.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = found.nextDoc()) {
                if (live == null || live.get(doc)) {
                    return doc;
                }
            }
        }
        return -1;
    }

    /** Takes away from {@code documents} what does not fit. */
    void narrow(LeafReaderContext leaf, Columns columns, FixedBitSet documents) throws IOException {
        if (!likeNumber.isEmpty()) {
            narrowToPalette(leaf, columns, documents);
            return;
        }
        for (int i = 0; i < matches.length; i++) {
            ColourTree tree = tree(columns, asks.get(i));
            double share = asks.get(i).role() == null ? choice.share() : 0;
            if (documents.cardinality() > FEW) {
                documents.and(new ColourRangeSearch(tree, asks.get(i).colour())
                        .within(choice.limit(), share, documents.length()));
                continue;
            }
            for (int doc = NearestPalettes.next(documents, 0);
                    doc >= 0;
                    doc = NearestPalettes.next(documents, doc + 1)) {
                if (!fits(matches[i], tree, doc, share)) {
                    documents.clear(doc);
                }
            }
        }
    }

    private boolean fits(ColourMatch match, ColourTree tree, int doc, double share) {
        if (share > 0) {
            match.whole(tree, doc);
            return match.share >= share - ColourMatch.SHARE_SLACK;
        }
        match.nearest(tree, doc, choice.limit());
        return match.distance <= choice.limit();
    }

    private void narrowToPalette(LeafReaderContext leaf, Columns columns, FixedBitSet documents) throws IOException {
        if (palette == null) {
            documents.clear(0, documents.length());
            return;
        }
        int itself = document(leaf, likeNumber);
        for (int doc = NearestPalettes.next(documents, 0); doc >= 0; doc = NearestPalettes.next(documents, doc + 1)) {
            boolean colourless = columns.colours().start[doc] == columns.colours().start[doc + 1];
            if (doc == itself || colourless) {
                documents.clear(doc);
            }
        }
        if (choice.within() == null) {
            return;
        }
        if (documents.cardinality() > FEW) {
            NearestDistances near = new NearestDistances(Integer.MAX_VALUE, choice.limit());
            new NearestPalettes(columns.colours(), palette).nearest(documents, 0, near);
            documents.clear(0, documents.length());
            near.all().forEach(each -> documents.set(each.doc()));
            return;
        }
        for (int doc = NearestPalettes.next(documents, 0); doc >= 0; doc = NearestPalettes.next(documents, doc + 1)) {
            if (palette.to(columns.colours(), doc, choice.limit()) > choice.limit()) {
                documents.clear(doc);
            }
        }
    }

    private ColourTree tree(Columns columns, ColourChoice.Ask ask) {
        if (ask.role() != null) {
            return ask.orCloth() ? columns.regionsOrCloth(ask.role()) : columns.regions(ask.role());
        }
        return choice.picture() ? columns.pictures() : columns.colours();
    }

    /** Offers every document of a segment that may be among the nearest. */
    void nearest(Columns columns, FixedBitSet documents, int docBase, NearestDistances nearest) {
        boolean many = documents.cardinality() > FEW;
        if (many && palette != null) {
            new NearestPalettes(columns.colours(), palette).nearest(documents, docBase, nearest);
        } else if (many && asks.size() == 1) {
            new ColourRangeSearch(tree(columns, asks.get(0)), asks.get(0).colour())
                    .nearest(documents, docBase, nearest);
        } else {
            for (int doc = NearestPalettes.next(documents, 0);
                    doc >= 0;
                    doc = NearestPalettes.next(documents, doc + 1)) {
                double distance = distance(columns, doc, nearest.worst());
                if (distance < Double.POSITIVE_INFINITY) {
                    nearest.offer(docBase + doc, distance);
                }
            }
        }
    }

    double limit() {
        return choice.limit();
    }

    /** The distance of the palette, or the greatest of those of the colours asked for; infinite where surely above the limit. */
    double distance(Columns columns, int doc, double limit) {
        if (!likeNumber.isEmpty()) {
            return palette.to(columns.colours(), doc, limit);
        }
        worst = -1;
        for (int i = 0; i < matches.length; i++) {
            matches[i].nearest(tree(columns, asks.get(i)), doc, limit);
            if (matches[i].distance > worst) {
                worst = matches[i].distance;
                worstAsk = i;
            }
            if (worst == Double.POSITIVE_INFINITY) {
                break;
            }
        }
        return worst;
    }

    /** A hit with its distance, share and nearest colour, as in {@link Hit}. */
    Hit hit(PieceCard card, Columns columns, int doc, List<String> why) {
        double distance = distance(columns, doc, Double.POSITIVE_INFINITY);
        if (!likeNumber.isEmpty()) {
            return new Hit(card, distance, null, null, why);
        }
        ColourTree tree = tree(columns, asks.get(worstAsk));
        ColourMatch match = matches[worstAsk];
        match.whole(tree, doc);
        int i = match.nearest;
        return new Hit(
                card,
                distance,
                Double.isNaN(match.share) ? null : match.share,
                new tenterbook.colour.space.Lab(tree.lightness[i], tree.a[i], tree.b[i]),
                why);
    }
}
