package tenterbook.search.colour;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;

/** The close bound against the plain formula; the formula itself is checked in {@code colour}. */
class CloseBoundTest {
    private static double close(double L1, double a1, double b1, double L2, double a2, double b2) {
        double difference = Ciede2000.difference(L1, a1, b1, L2, a2, b2);
        CloseBound bound = new CloseBound(L1, a1, b1);
        double least = bound.least(L2, a2, b2);
        double square = difference * difference;
        if (bound.least2() > square + BoxBound.SLACK / 10 * Math.max(1, square / 1600)) {
            throw new AssertionError("close bound² %s above ΔE00² %s for %s,%s,%s and %s,%s,%s"
                    .formatted(bound.least2(), square, L1, a1, b1, L2, a2, b2));
        }
        if (bound.most2() < square - BoxBound.SLACK / 10 * Math.max(1, square / 1600)) {
            throw new AssertionError("close bound² from above %s below ΔE00² %s for %s,%s,%s and %s,%s,%s"
                    .formatted(bound.most2(), square, L1, a1, b1, L2, a2, b2));
        }
        if (least > difference) {
            throw new AssertionError("close bound %s above ΔE00 %s for %s,%s,%s and %s,%s,%s"
                    .formatted(least, difference, L1, a1, b1, L2, a2, b2));
        }
        return difference - least;
    }

    @Property(tries = 20_000)
    void theCloseBoundIsNeverAboveTheDifference(
            @ForAll @DoubleRange(min = 0, max = 100) double L1,
            @ForAll @DoubleRange(min = -128, max = 128) double a1,
            @ForAll @DoubleRange(min = -128, max = 128) double b1,
            @ForAll @DoubleRange(min = 0, max = 100) double L2,
            @ForAll @DoubleRange(min = -128, max = 128) double a2,
            @ForAll @DoubleRange(min = -128, max = 128) double b2) {
        close(L1, a1, b1, L2, a2, b2);
    }

    /** Where Δa² + Δb² and ΔC² nearly cancel, and blue, where RT multiplies what is left of them. */
    @Test
    void theBoundsHoldForColoursOfTheSameHue() {
        Random random = new Random(305);
        for (int i = 0; i < 300_000; i++) {
            double hue = Math.toRadians(255 + random.nextInt(51));
            double near = i % 3 == 0 ? 10 + random.nextDouble() * 100 : 33;
            double far = near * (i % 5 == 0 ? 1.5 : 0.2 + 2 * random.nextDouble());
            double L = random.nextInt(101);
            double a1 = near * Math.cos(hue);
            double b1 = near * Math.sin(hue);
            double a2 = far * Math.cos(hue);
            double b2 = far * Math.sin(hue);
            close(L, a1, b1, L, a2, b2);
        }
        close(23, 10.3, -31.8, 23, 15.45, -47.7);
        close(50, -0.28863461794841533, -116.6455520539701, 51.18025647939704, 0, -3.544254494581968e-10);
    }

    /** Near and far pairs, a third of them blue, some of them grey; and for cloth-like pairs it is as close as promised. */
    @Test
    void theCloseBoundHoldsForAMillionPairsAndIsWithinAThousandthForAlmostAll() {
        Random random = new Random(275);
        int loose = 0;
        for (int i = 0; i < 1_000_000; i++) {
            double spread = i % 4 == 0 ? 120 : i % 4 == 1 ? 30 : i % 4 == 2 ? 3 : 0.01;
            double L1 = random.nextDouble() * 100;
            double a1 = (random.nextDouble() * 2 - 1) * 60;
            double b1 = i % 3 == 0 ? -20 - random.nextDouble() * 60 : (random.nextDouble() * 2 - 1) * 60;
            if (i % 11 == 0) {
                a1 *= 0.001;
                b1 *= 0.001;
            }
            double L2 = Math.max(0, Math.min(100, L1 + random.nextGaussian() * spread));
            double a2 = i % 13 == 0 ? -a1 : a1 + random.nextGaussian() * spread;
            double b2 = i % 13 == 0 ? -b1 : b1 + random.nextGaussian() * spread;
            double difference = Ciede2000.difference(L1, a1, b1, L2, a2, b2);
            loose += close(L1, a1, b1, L2, a2, b2) > difference / 1000 + 1e-3 ? 1 : 0;
        }
        assertThat(loose).isLessThan(100_000);
    }
}
