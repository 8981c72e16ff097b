package tenterbook.colour.space;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.ColourRegion.Ends;

/** The limits of a colour's name are those by which colours are named. */
class ColourRegionTest {
    private static final Map<String, ColourRegion> REGIONS = ColourRegion.byName();

    @Test
    void everyColourLiesInTheRegionOfItsName() {
        Random random = new Random(20261128);
        for (int i = 0; i < 200_000; i++) {
            double chroma = random.nextDouble() * 90;
            double angle = random.nextDouble() * 2 * Math.PI;
            Lab colour = new Lab(random.nextDouble() * 100, chroma * Math.cos(angle), chroma * Math.sin(angle));
            ColourRegion region = REGIONS.get(ColourWords.of(colour));
            assertThat(region).as(ColourWords.of(colour)).isNotNull();
            assertThat(within(region, colour)).as("%s in %s", colour, region).isTrue();
        }
    }

    @Test
    void aWholeRegionHasNoOtherName() {
        Random random = new Random(5);
        assertThat(REGIONS.values()).anyMatch(ColourRegion::whole).anyMatch(region -> !region.whole());
        REGIONS.forEach((name, region) -> {
            for (int i = 0; region.whole() && i < 2_000; i++) {
                double lightness = between(region.lightness(), random);
                double chroma = between(region.chroma(), random);
                Ends hue = region.hue();
                double arc = hue.to() > hue.from() ? hue.to() - hue.from() : hue.to() + 360 - hue.from();
                double angle = Math.toRadians(hue.from() + arc * (0.001 + 0.998 * random.nextDouble()));
                Lab colour = new Lab(lightness, chroma * Math.cos(angle), chroma * Math.sin(angle));
                assertThat(ColourWords.of(colour)).as("%s", colour).isEqualTo(name);
            }
        });
    }

    /** Deep: L* below 36; blue: from 235 to 286 degrees; no grey from C* 12 on; darker than L* 12 it is near-black. */
    @Test
    void deepBlueIsWhereItsNameSays() {
        ColourRegion deepBlue = REGIONS.get("deep blue");
        assertThat(deepBlue.lightness()).isEqualTo(new Ends(12, 36));
        assertThat(deepBlue.chroma()).isEqualTo(new Ends(12, ColourRegion.OPEN));
        assertThat(deepBlue.hue()).isEqualTo(new Ends(235, 286));
        assertThat(deepBlue.whole()).as("of L* 35 and C* 55 it is vivid").isFalse();
        assertThat(REGIONS.get("blue").whole()).isTrue();
        assertThat(ColourWords.of(deepBlue.centre())).isEqualTo("deep blue");
        assertThat(REGIONS.get("crimson").hue()).as("it passes 0").isEqualTo(new Ends(350, 16));
        assertThat(REGIONS.get("white").everyHue()).isTrue();
    }

    @Test
    void theCentreHasTheNameItself() {
        REGIONS.forEach((name, region) ->
                assertThat(ColourWords.of(region.centre())).as("%s", region).isEqualTo(name));
    }

    private static double between(Ends ends, Random random) {
        return ends.from() + (ends.to() - ends.from()) * (0.001 + 0.998 * random.nextDouble());
    }

    private static boolean within(ColourRegion region, Lab colour) {
        double hue = colour.hueDegrees();
        Ends arc = region.hue();
        boolean inArc =
                arc.to() > arc.from() ? hue >= arc.from() && hue <= arc.to() : hue >= arc.from() || hue <= arc.to();
        boolean inChroma = colour.chroma() >= region.chroma().from()
                && (region.chroma().to() == ColourRegion.OPEN
                        || colour.chroma() <= region.chroma().to());
        return inArc
                && inChroma
                && colour.lightness() >= region.lightness().from()
                && colour.lightness() <= region.lightness().to();
    }
}
