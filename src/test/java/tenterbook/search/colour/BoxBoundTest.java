package tenterbook.search.colour;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;

/** The bounds of a box against the plain formula at points of it; the formula itself is checked in {@code colour}. */
class BoxBoundTest {
    private static void holds(double[] asked, double[] box, Random random, int points) {
        BoxBound bound = new BoxBound(asked[0], asked[1], asked[2]);
        int corners = BoxBound.corners(box, 0);
        for (int i = 0; i < points; i++) {
            double[] point = new double[3];
            for (int axis = 0; axis < 3; axis++) {
                double where = random.nextInt(4) == 0 ? random.nextInt(2) : random.nextDouble();
                double value = box[2 * axis] + where * (box[2 * axis + 1] - box[2 * axis]);
                point[axis] = Math.max(box[2 * axis], Math.min(box[2 * axis + 1], value));
            }
            double difference = Ciede2000.difference(asked[0], asked[1], asked[2], point[0], point[1], point[2]);
            double square = difference * difference;
            bound.box(box, 0, corners, Double.POSITIVE_INFINITY);
            between(bound, square, asked, point);
            bound.box(box, 0, corners, square);
            if (bound.least2() > square + BoxBound.SLACK / 10) {
                throw new AssertionError("cut short above ΔE00² " + square);
            }
        }
    }

    private static void between(BoxBound bound, double square, double[] asked, double[] point) {
        double slack = BoxBound.SLACK / 10 * Math.max(1, square / 1600);
        if (bound.least2() > square + slack || bound.most2() < square - slack) {
            throw new AssertionError("ΔE00² %s not in %s to %s for %s and %s"
                    .formatted(
                            square,
                            bound.least2(),
                            bound.most2(),
                            java.util.Arrays.toString(asked),
                            java.util.Arrays.toString(point)));
        }
    }

    @Property(tries = 50_000)
    void noColourOfABoxIsNearerOrFartherThanItsBounds(
            @ForAll @DoubleRange(min = 0, max = 100) double L1,
            @ForAll @DoubleRange(min = -128, max = 128) double a1,
            @ForAll @DoubleRange(min = -128, max = 128) double b1,
            @ForAll @DoubleRange(min = 0, max = 100) double L2,
            @ForAll @DoubleRange(min = -128, max = 128) double a2,
            @ForAll @DoubleRange(min = -128, max = 128) double b2,
            @ForAll @DoubleRange(min = 0, max = 40) double wide,
            @ForAll Random random) {
        holds(new double[] {L1, a1, b1}, box(L2, a2, b2, wide, random), random, 10);
    }

    private static double[] box(double L, double a, double b, double wide, Random random) {
        return new double[] {
            L, L + random.nextDouble() * wide, a, a + random.nextDouble() * wide, b, b + random.nextDouble() * wide
        };
    }

    @Test
    void itHoldsForMillionsOfPairsFarNearBlueAndGrey() {
        Random random = new Random(2000);
        for (int i = 0; i < 400_000; i++) {
            double spread = i % 4 == 0 ? 120 : i % 4 == 1 ? 30 : i % 4 == 2 ? 3 : 0.01;
            double grey = i % 11 == 0 ? 0.001 : i % 13 == 0 ? 0 : 1;
            double L1 = random.nextDouble() * 100;
            double a1 = (random.nextDouble() * 2 - 1) * 100 * grey;
            double b1 = (i % 3 == 0 ? -40 - random.nextDouble() * 80 : (random.nextDouble() * 2 - 1) * 100) * grey;
            double wide = i % 7 == 0 ? 0 : i % 5 == 0 ? 0.1 : i % 2 == 0 ? 2 : 12;
            double[] box = box(
                    L1 + (random.nextDouble() * 2 - 1) * spread,
                    a1 + (random.nextDouble() * 2 - 1) * spread - wide / 2,
                    b1 + (random.nextDouble() * 2 - 1) * spread - wide / 2,
                    wide,
                    random);
            holds(new double[] {L1, a1, b1}, box, random, 6);
        }
    }

    @Test
    void smallBoxesAreBoundedClosely() {
        Random random = new Random(1);
        int told = 0;
        int sure = 0;
        for (int i = 0; i < 100_000; i++) {
            double[] box =
                    box(random.nextDouble() * 98, random.nextGaussian() * 20, random.nextGaussian() * 20, 2, random);
            double difference = Ciede2000.difference(40, -4, -22, box[0], box[2], box[4]);
            if (Math.abs(difference - 10) > 1.5) {
                BoxBound bound = new BoxBound(40, -4, -22);
                bound.box(box, 0, BoxBound.corners(box, 0), 100);
                sure += bound.least2() > 100 || bound.most2() < 100 ? 1 : 0;
                told++;
            }
        }
        assertThat((double) sure / told).isGreaterThan(0.98);
    }
}
