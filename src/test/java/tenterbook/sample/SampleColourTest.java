package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.LABColorSpaces;
import com.github.ajalt.colormath.model.RGB;
import org.junit.jupiter.api.Test;
import tenterbook.sample.SampleColour.Lab;

/** Checked against the independent library colormath, CIELAB with white D65. */
class SampleColourTest {
    @Test
    void labToEncodedSrgbAgreesWithAnIndependentLibrary() {
        for (SampleScenes.Cloth cloth : SampleScenes.cloths().values()) {
            Lab lab = cloth.ground();
            RGB other = LABColorSpaces.INSTANCE
                    .getLAB65()
                    .invoke((float) lab.l(), (float) lab.a(), (float) lab.b(), 1f)
                    .toSRGB();
            double[] ours = SampleColour.linear(lab);
            float[] theirs = {other.getR(), other.getG(), other.getB()};
            for (int k = 0; k < 3; k++) {
                double level = Math.max(SampleColour.encode(0.0015), 255 * theirs[k]);
                assertThat(SampleColour.encode(ours[k])).as(cloth.subject()).isEqualTo(level, within(0.6));
            }
        }
    }

    @Test
    void labSurvivesTheWayThroughLinearLight() {
        Lab lab = new Lab(48, -5, -24);
        double[] rgb = SampleColour.linear(lab);
        assertThat(SampleColour.lab(rgb[0], rgb[1], rgb[2]).distance(lab)).isLessThan(0.01);
    }

    @Test
    void theTableForEncodingStaysCloseToTheCurve() {
        for (int i = 0; i <= 5000; i++) {
            double linear = i / 5000.0;
            assertThat(SampleColour.encodeFast(linear)).isEqualTo(SampleColour.encode(linear), within(0.02));
        }
    }

    @Test
    void absorptionAndReflectanceAreInverse() {
        for (double r = 0.01; r < 1; r += 0.07) {
            assertThat(SampleColour.reflectance(SampleColour.absorption(r))).isEqualTo(r, within(1e-9));
        }
    }
}
