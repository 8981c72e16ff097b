package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tenterbook.sample.SampleColour.Lab;
import tenterbook.sample.Scene.Backdrop;
import tenterbook.sample.Scene.Cast;
import tenterbook.sample.Scene.View;

class ClothPhotographTest {
    private static final Map<String, SampleScenes.Cloth> CLOTHS = SampleScenes.cloths();
    /** Long edge where every cloth is rendered, pixels: a channel is then still wide enough to have a middle. */
    private static final int MANY = 400;

    private static Scene small(String subject, View view, Backdrop backdrop, Cast cast) {
        return sized(720, subject, view, backdrop, cast);
    }

    private static Scene sized(int longEdge, String subject, View view, Backdrop backdrop, Cast cast) {
        SampleScenes.Cloth c = CLOTHS.get(subject);
        boolean portrait = backdrop == Backdrop.WALL;
        return new Scene(
                c.boardState(),
                c.across(),
                c.down(),
                c.kind(),
                c.ground(),
                c.undyed(),
                c.local(),
                c.faults(),
                c.seed(),
                view,
                1,
                backdrop,
                cast,
                portrait ? longEdge / 4 * 3 : longEdge,
                portrait ? longEdge : longEdge / 4 * 3,
                "",
                7);
    }

    /** Median L*, a*, b* of the picture where the cloth lies more than inside mm in a channel, or that far under land. */
    private static Lab median(ClothPhotograph p, double inside, boolean channel) {
        int n = p.cover.length;
        double[][] values = new double[3][n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            boolean wanted = channel ? p.channel[i] > inside : p.channel[i] < -inside;
            if (p.cover[i] >= 1 && wanted) {
                Lab lab = SampleColour.lab(p.picture.red[i], p.picture.green[i], p.picture.blue[i]);
                values[0][count] = lab.l();
                values[1][count] = lab.a();
                values[2][count++] = lab.b();
            }
        }
        assertThat(count).as("pixels to judge").isGreaterThan(300);
        double[] middle = new double[3];
        for (int k = 0; k < 3; k++) {
            double[] sorted = Arrays.copyOf(values[k], count);
            Arrays.sort(sorted);
            middle[k] = sorted[count / 2];
        }
        return new Lab(middle[0], middle[1], middle[2]);
    }

    @Test
    void theDyedGroundHasTheStatedColourOfEveryCloth() {
        for (SampleScenes.Cloth cloth : CLOTHS.values()) {
            for (Backdrop backdrop : new Backdrop[] {Backdrop.LINEN, Backdrop.WALL}) {
                Scene scene = sized(MANY, cloth.subject(), View.FRONT, backdrop, new Cast(1, 1, 1));
                Lab seen = median(ClothPhotograph.before(scene), 1.2, true);
                assertThat(seen.distance(cloth.ground()))
                        .as("%s on %s: %s", cloth.subject(), backdrop, seen)
                        .isLessThan(6);
            }
        }
    }

    @Test
    void whereTheLandsPinchedTheClothIsLighter() {
        for (SampleScenes.Cloth cloth : CLOTHS.values()) {
            Scene scene = sized(MANY, cloth.subject(), View.LAYER, Backdrop.LINEN, new Cast(1, 1, 1));
            ClothPhotograph p = ClothPhotograph.before(scene);
            assertThat(median(p, 1.2, false).l())
                    .as(cloth.subject())
                    .isGreaterThan(median(p, 1.2, true).l() + 12);
        }
    }

    @Test
    void neighbouringPanelsMirrorEachOther() {
        for (String subject : new String[] {"V24-002", "V24-006", "V24-015"}) {
            ClothPhotograph p = ClothPhotograph.before(small(subject, View.FRONT, Backdrop.LINEN, new Cast(1, 1, 1)));
            assertThat(likeness(p, subject, 1, 0, true, false))
                    .as(subject + " beside")
                    .isGreaterThan(0.75);
            assertThat(likeness(p, subject, 0, 1, false, true))
                    .as(subject + " below")
                    .isGreaterThan(0.75);
            assertThat(likeness(p, subject, 1, 0, false, false))
                    .as(subject + " unturned")
                    .isLessThan(0.5);
        }
    }

    /** Correlation of the first panel with another one, that one turned over as told. */
    private static double likeness(
            ClothPhotograph p, String subject, int column, int row, boolean overX, boolean overY) {
        double[] first = panel(p, subject, 0, 0);
        double[] other = panel(p, subject, column, row);
        double[] turned = new double[first.length];
        for (int y = 0; y < BINS; y++) {
            for (int x = 0; x < BINS; x++) {
                turned[y * BINS + x] = other[(overY ? BINS - 1 - y : y) * BINS + (overX ? BINS - 1 - x : x)];
            }
        }
        double meanA = Arrays.stream(first).average().orElseThrow();
        double meanB = Arrays.stream(turned).average().orElseThrow();
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < first.length; i++) {
            ab += (first[i] - meanA) * (turned[i] - meanB);
            aa += (first[i] - meanA) * (first[i] - meanA);
            bb += (turned[i] - meanB) * (turned[i] - meanB);
        }
        return ab / Math.sqrt(aa * bb);
    }

    private static final int BINS = 40;

    private static double[] panel(ClothPhotograph p, String subject, int column, int row) {
        Motif motif = Motifs.of(CLOTHS.get(subject).boardState());
        double[] sum = new double[BINS * BINS];
        int[] count = new int[BINS * BINS];
        for (int i = 0; i < p.cover.length; i++) {
            double u = p.clothX[i] / motif.widthMm() - column;
            double v = p.clothY[i] / motif.heightMm() - row;
            if (u >= 0 && u < 1 && v >= 0 && v < 1) {
                int bin = (int) (v * BINS) * BINS + (int) (u * BINS);
                sum[bin] += p.picture.green[i];
                count[bin]++;
            }
        }
        for (int i = 0; i < sum.length; i++) {
            assertThat(count[i]).as("pixels in bin").isPositive();
            sum[i] /= count[i];
        }
        return sum;
    }

    @Test
    void theGreyCardShowsTheStatedCastAndNothingElse() {
        Cast cast = new Cast(1.06, 1, 0.90);
        ClothPhotograph.Taken taken = ClothPhotograph.take(small("V24-002", View.FRONT, Backdrop.LINEN, cast));
        double[] rgb = cardMean(taken);
        assertThat(rgb[0] / rgb[1]).isBetween(1.04, 1.08);
        assertThat(rgb[2] / rgb[1]).isBetween(0.88, 0.92);
        assertThat(rgb[1]).as("18 per cent, give or take the fall of the light").isBetween(0.14, 0.21);
    }

    private static double[] cardMean(ClothPhotograph.Taken taken) {
        double x = 0;
        double y = 0;
        for (double[] corner : taken.notes().greyCard()) {
            x += corner[0] / 4;
            y += corner[1] / 4;
        }
        double[] sum = new double[3];
        for (int dy = -9; dy <= 9; dy++) {
            for (int dx = -9; dx <= 9; dx++) {
                int pixel = taken.image().getRGB((int) x + dx, (int) y + dy);
                for (int k = 0; k < 3; k++) {
                    sum[k] += SampleColour.decode(pixel >> (16 - 8 * k) & 255) / 361;
                }
            }
        }
        return sum;
    }

    @Test
    void theSameSceneGivesTheSamePictureAndAnotherSeedAnother() {
        Scene scene = small("V24-008", View.FRONT, Backdrop.WALL, new Cast(1, 1, 1));
        int[] once = pixels(ClothPhotograph.take(scene).image());
        assertThat(pixels(ClothPhotograph.take(scene).image())).isEqualTo(once);
        Scene other = small("V24-007", View.FRONT, Backdrop.WALL, new Cast(1, 1, 1));
        assertThat(pixels(ClothPhotograph.take(other).image())).isNotEqualTo(once);
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    @Test
    void layersAreCountedToAndFroThroughTheFolds() {
        Scene scene = small("V24-002", View.FRONT, Backdrop.LINEN, new Cast(1, 1, 1));
        assertThat(scene.layerOf(0, 0)).isEqualTo(1);
        assertThat(scene.layerOf(3, 0)).isEqualTo(4);
        assertThat(scene.layerOf(3, 1)).isEqualTo(5);
        for (int layer = 1; layer <= 8; layer++) {
            int[] panel = scene.panelOf(layer);
            assertThat(scene.layerOf(panel[0], panel[1])).isEqualTo(layer);
        }
    }
}
