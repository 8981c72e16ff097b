package tenterbook.sample;

import java.util.List;
import java.util.Set;
import tenterbook.sample.SampleColour.Lab;

/**
 * One photograph to be taken of one dyed cloth.
 *
 * @param boardState see {@link Motifs#STATES}
 * @param across panels of the opened cloth from left to right, 1 or more
 * @param down panels from top to bottom, 1 or more
 * @param ground the dyed ground, as measured
 * @param undyed the cloth where the lands kept the dye out
 * @param clothSeed what the dyeing left to chance: the same in all photographs of one cloth
 * @param layer counted from 1 at the upper board; used by {@link View#LAYER} and {@link View#DETAIL}
 * @param ticket short text on the paper ticket beside the cloth, or empty
 */
record Scene(
        String boardState,
        int across,
        int down,
        ClothKind cloth,
        Lab ground,
        Lab undyed,
        List<LocalColour> local,
        Set<Fault> faults,
        long clothSeed,
        View view,
        int layer,
        Backdrop backdrop,
        Cast cast,
        int width,
        int height,
        String ticket,
        long photoSeed) {

    enum View {
        FRONT,
        DETAIL,
        BACK,
        LAYER,
        LABEL
    }

    enum Backdrop {
        WALL,
        LINEN,
        PINE,
        STONE,
        GRASS,
        DARK_FLOOR,
        CARPET
    }

    enum Fault {
        BEAK_LEAK,
        PALE_INNER,
        WARPED_EDGE,
        BOARD_BLEED,
        FLIPPED_END
    }

    /** Colour put in through holes first to last, counted from 1. */
    record LocalColour(int first, int last, Lab colour) {}

    /** Gains on linear light, put on the whole picture at the end; 1, 1, 1 is none. */
    record Cast(double red, double green, double blue) {}

    Scene {
        if (across < 1 || down < 1) {
            throw new IllegalArgumentException(
                    "A cloth opens to at least one panel each way; found: " + across + " across, " + down + " down");
        }
        local = List.copyOf(local);
        faults = Set.copyOf(faults);
    }

    boolean hung() {
        return backdrop == Backdrop.WALL && (view == View.FRONT || view == View.BACK);
    }

    /** Layer of a panel, from 1: folded to and fro across, then to and fro down. */
    int layerOf(int column, int row) {
        return row * across + (row % 2 == 0 ? column : across - 1 - column) + 1;
    }

    /** Column and row of a layer. */
    int[] panelOf(int layerNumber) {
        int row = (layerNumber - 1) / across;
        int k = (layerNumber - 1) % across;
        return new int[] {row % 2 == 0 ? k : across - 1 - k, row};
    }
}
