package tenterbook.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.recipe.dip.DipCount;
import tenterbook.recipe.dip.Group;

/**
 * Photographed pieces of an invented blue vat whose true law is hidden from the estimate.
 *
 * <p>The dye on the cloth follows one of {@link Law}. Each clamping finds the vat stronger or weaker by a factor, lognormal with
 * a spread of 5 to 20 % that belongs to the vat. K/S of the three channels is proportional to the dye on top of the cloth's own,
 * 0.5 to 2 % of the light is reflected by the surface, and each photograph is wrong in CIELAB by a random vector whose root
 * mean square is ΔE 2 to 4. Figures: ours, in the range of the sample archive.
 */
record SimulatedVat(List<Dyed> pieces, List<Further> further) {
    private static final double[] CLOTH = {0.012, 0.018, 0.034};

    /** A piece that was dipped further, in a later clamping that found the vat at another strength. */
    record Further(Dyed now, Dyed then) {}

    /** The form of the dye on the cloth over dips. */
    enum Law {
        LEVELLING_OFF,
        STRAIGHT,
        POWER,
        SLOW_START;

        /** A random member of the family, with K/S of the red channel of 10 to 24 at twelve dips. */
        DoubleUnaryOperator draw(SplittableRandom random) {
            double atTwelve = random.nextDouble(10, 24);
            double rate = Math.exp(random.nextDouble(Math.log(0.08), Math.log(0.25)));
            double power = random.nextDouble(0.5, 0.8);
            DoubleUnaryOperator form = switch (this) {
                case LEVELLING_OFF -> n -> -Math.expm1(-rate * n);
                case STRAIGHT -> n -> n;
                case POWER -> n -> Math.pow(n, power);
                case SLOW_START -> n -> -Math.expm1(-Math.pow(rate * n, 1.4));
            };
            return n -> atTwelve * form.applyAsDouble(n) / form.applyAsDouble(12);
        }
    }

    /** One to three cloths of four to twelve pieces each, of two to twelve dips, with at least four different counts each. */
    static SimulatedVat draw(Law law, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        DoubleUnaryOperator dye = law.draw(random);
        double green = random.nextDouble(0.2, 0.35);
        double[] share = {1, green, green * random.nextDouble(0.25, 0.45)};
        double surface = random.nextDouble(0.005, 0.02);
        double vatSpread = random.nextDouble(0.05, 0.2);
        double photoSpread = random.nextDouble(2, 4) / Math.sqrt(3);
        List<Dyed> pieces = new ArrayList<>();
        List<Further> further = new ArrayList<>();
        int cloths = random.nextInt(1, 4);
        for (int c = 0; c < cloths; c++) {
            Group group = new Group("cloth " + c, "woad");
            double takesUp = Math.exp(0.25 * random.nextGaussian());
            for (int dips : counts(random)) {
                int[] counts = {dips, random.nextInt(dips + 1, 14)};
                Dyed[] states = new Dyed[2];
                double depth = 0;
                for (int state = 0; state < 2; state++) {
                    double added = dye.applyAsDouble(counts[state]) - (state == 0 ? 0 : dye.applyAsDouble(dips));
                    depth += takesUp * Math.exp(vatSpread * random.nextGaussian()) * added;
                    states[state] = new Dyed(
                            "V24-" + (100 + pieces.size()),
                            DipCount.exactly(counts[state]),
                            photographed(seen(depth, share, surface), photoSpread, random),
                            group,
                            true,
                            List.of());
                }
                pieces.add(states[0]);
                further.add(new Further(states[0], states[1]));
            }
        }
        return new SimulatedVat(pieces, further);
    }

    private static Lab seen(double depth, double[] share, double surface) {
        double[] light = new double[3];
        for (int k = 0; k < 3; k++) {
            light[k] = surface + (1 - surface) * DepthOfShade.reflectance(CLOTH[k] + share[k] * depth);
        }
        return new LinearRgb(light[0], light[1], light[2]).lab();
    }

    private static List<Integer> counts(SplittableRandom random) {
        int size = random.nextInt(4, 13);
        List<Integer> counts = new ArrayList<>();
        while (new TreeSet<>(counts).size() < 4) {
            counts.clear();
            for (int i = 0; i < size; i++) {
                counts.add(random.nextInt(2, 13));
            }
        }
        return counts;
    }

    private static Lab photographed(Lab seen, double spread, SplittableRandom random) {
        return new Lab(
                Math.max(1, Math.min(100, seen.lightness() + spread * random.nextGaussian())),
                seen.a() + spread * random.nextGaussian(),
                seen.b() + spread * random.nextGaussian());
    }
}
