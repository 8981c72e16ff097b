package tenterbook.search;

/**
 * A segment's palettes once more, document after document and as {@link PaletteDistance} weighs them, for going through all of
 * them quickly: which leaf of the tree each colour lies in, its weight, and the colour itself beside those of the same piece. About
 * 32 bytes a colour; never changes.
 */
final class PaletteColumns {
    /** Leaf of each colour, counted from {@link ColourTree#firstLeaf}; those of document d stand from {@code start[d]} on. */
    final int[] leaf;
    /** Weight of each colour, 0 where it is left out; those of one document sum to 1. */
    final float[] weight;
    /** L, a, b of each colour. */
    final double[] lab;

    PaletteColumns(ColourTree tree) {
        leaf = new int[tree.size()];
        weight = new float[tree.size()];
        lab = new double[3 * tree.size()];
        int[] leafOfPlace = new int[tree.size()];
        number(tree, leafOfPlace, 1, 0, tree.size());
        for (int doc = 0; doc + 1 < tree.start.length; doc++) {
            int from = tree.start[doc];
            int to = tree.start[doc + 1];
            double sum = 0;
            for (int at = from; at < to; at++) {
                double share = tree.share[tree.at[at]];
                sum += share > 0 ? share : 0;
            }
            for (int at = from; at < to; at++) {
                double share = tree.share[tree.at[at]];
                leaf[at] = leafOfPlace[tree.at[at]];
                lab[3 * at] = tree.lightness[tree.at[at]];
                lab[3 * at + 1] = tree.a[tree.at[at]];
                lab[3 * at + 2] = tree.b[tree.at[at]];
                weight[at] = sum == 0 ? 1f / (to - from) : share > 0 ? (float) (share / sum) : 0;
            }
        }
    }

    private static void number(ColourTree tree, int[] leafOfPlace, int part, int from, int to) {
        if (part >= tree.firstLeaf) {
            java.util.Arrays.fill(leafOfPlace, from, to, part - tree.firstLeaf);
            return;
        }
        int middle = ColourTree.middle(from, to);
        number(tree, leafOfPlace, 2 * part, from, middle);
        number(tree, leafOfPlace, 2 * part + 1, middle, to);
    }
}
