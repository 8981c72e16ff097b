package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import tenterbook.colour.compare.DepthOfShade.Channel;
import tenterbook.colour.space.Lab;

class DepthOfShadeTest {
    /** By hand from (1 − R)² / 2R, Kubelka and Munk 1931. */
    @Test
    void depthFollowsKubelkaAndMunk() {
        assertThat(DepthOfShade.ks(1)).isZero();
        assertThat(DepthOfShade.ks(0.5)).isCloseTo(0.25, within(1e-12));
        assertThat(DepthOfShade.ks(0.25)).isCloseTo(1.125, within(1e-12));
        assertThat(DepthOfShade.ks(0.1)).isCloseTo(4.05, within(1e-12));
        assertThat(DepthOfShade.ks(0.02)).isCloseTo(24.01, within(1e-12));
    }

    @Property
    void reflectanceComesBackFromDepth(@ForAll @DoubleRange(min = 1e-6, max = 1) @Scale(6) double reflectance) {
        assertThat(DepthOfShade.reflectance(DepthOfShade.ks(reflectance)))
                .isCloseTo(reflectance, within(1e-7 * Math.max(reflectance, 1e-3)));
    }

    @Property
    void lessLightIsADeeperShade(
            @ForAll @DoubleRange(min = 1e-6, max = 1) @Scale(6) double one,
            @ForAll @DoubleRange(min = 1e-6, max = 1) @Scale(6) double other) {
        double darker = Math.min(one, other);
        double lighter = Math.max(one, other);
        assertThat(DepthOfShade.ks(darker)).isGreaterThanOrEqualTo(DepthOfShade.ks(lighter));
    }

    @Test
    void aReflectanceThatIsNoneIsRefused() {
        for (double none : new double[] {0, -0.1, 1.0001, 25, Double.NaN}) {
            assertThatThrownBy(() -> DepthOfShade.ks(none))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("0.25 for 25\u00a0%")
                    .hasMessageContaining(String.valueOf(none));
        }
        assertThatThrownBy(() -> DepthOfShade.reflectance(-1)).hasMessageContaining("-1");
        assertThatThrownBy(() -> DepthOfShade.reflectance(Double.POSITIVE_INFINITY))
                .hasMessageContaining("Infinity");
    }

    @Test
    void aPhotographReadsAsItsLuminanceWhateverItsHue() {
        // L* 50 has Y/Yn = ((50 + 16) / 116)³ = 0.184187 (CIE 15).
        for (Lab colour : List.of(new Lab(50, 0, 0), new Lab(50, -5, -24), new Lab(50, -60, -60))) {
            assertThat(DepthOfShade.byPhoto(colour)).isCloseTo(DepthOfShade.ks(0.184187), within(1e-4));
        }
        assertThat(DepthOfShade.byPhoto(new Lab(100, 0, 0)))
                .isPositive()
                .isEqualTo(DepthOfShade.byPhoto(new Lab(99, 0, 0)));
        assertThat(DepthOfShade.byPhoto(new Lab(0, 0, 0))).isFinite().isEqualTo(DepthOfShade.byPhoto(new Lab(1, 0, 0)));
    }

    /** One ΔE of error in L* moves ln K/S about alike from light to deep blues; in the red channel a*, b* move it too. */
    @Test
    void anErrorOfAPhotographMovesTheLogarithmOfDepthAboutAlikeAtEveryDepth() {
        for (double lightness = 30; lightness <= 75; lightness += 5) {
            double step = Math.log(DepthOfShade.byPhoto(new Lab(lightness - 0.5, 0, 0))
                    / DepthOfShade.byPhoto(new Lab(lightness + 0.5, 0, 0)));
            assertThat(step).as("L* %s", lightness).isBetween(0.065, 0.095);
        }
    }

    @Test
    void blueClothIsReadInTheRedAndYellowClothInTheBlue() {
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(48, -5, -24), new Lab(34, -2, -25))))
                .isEqualTo(Channel.RED);
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(70, 2, 55)))).isEqualTo(Channel.BLUE);
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(43, 39, 10)))).isEqualTo(Channel.GREEN);
        assertThatThrownBy(() -> DepthOfShade.darkestChannel(List.of())).hasMessageContaining("none was given");
    }
}
