package tenterbook.search.colour;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Tables against the terms as Sharma, Wu, Dalal 2005 write them. */
class HueTermsTest {
    private static double T(double hue) {
        return 1
                - 0.17 * Math.cos(hue - Math.toRadians(30))
                + 0.24 * Math.cos(2 * hue)
                + 0.32 * Math.cos(3 * hue + Math.toRadians(6))
                - 0.20 * Math.cos(4 * hue - Math.toRadians(63));
    }

    /** @param hue from 0 to 2π, as the standard counts it */
    private static double turn(double hue) {
        double x = (Math.toDegrees(hue) - 275) / 25;
        return Math.sin(Math.toRadians(60) * Math.exp(-x * x));
    }

    @Test
    void everyHueOfARangeHasItsTermsBetweenTheEnds() {
        Random random = new Random(81);
        HueTerms terms = new HueTerms();
        for (int i = 0; i < 300_000; i++) {
            double middle = random.nextDouble() * 2 * Math.PI;
            double around = i % 5 == 0 ? 0 : Math.pow(10, -4 * random.nextDouble()) * 2;
            // Also told a whole turn too low or too high.
            terms.near(middle + (i % 3 - 1) * 2 * Math.PI, around);
            for (int k = 0; k < 5; k++) {
                double hue = middle + around * (k == 0 ? -1 : k == 1 ? 1 : random.nextDouble() * 2 - 1);
                double counted = (hue % (2 * Math.PI) + 2 * Math.PI) % (2 * Math.PI);
                assertThat(T(hue)).isBetween(terms.leastT() - 1e-12, terms.mostT() + 1e-12);
                assertThat(turn(counted)).isBetween(terms.leastTurn() - 1e-12, terms.mostTurn() + 1e-12);
            }
        }
    }

    @Test
    void aSingleHueIsToldClosely() {
        HueTerms terms = new HueTerms();
        for (int i = 0; i < 3600; i++) {
            double hue = 2 * Math.PI * i / 3600;
            terms.near(hue, 0);
            assertThat(terms.mostT() - terms.leastT()).isLessThan(0.004);
            assertThat(terms.mostTurn() - terms.leastTurn()).isLessThan(0.001);
        }
    }
}
