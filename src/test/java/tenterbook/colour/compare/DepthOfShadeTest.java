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
        assertThatThrownBy(() -> new ShadeReading(1, " ")).hasMessageContaining("band");
    }

    @Test
    void aGreyPhotographReadsAsItsLuminance() {
        // L* 50 has Y/Yn = ((50 + 16) / 116)³ = 0.184187 (CIE 15), and a grey has that in every channel.
        for (Channel channel : Channel.values()) {
            ShadeReading reading =
                    DepthOfShade.byPhoto(new Lab(50, 0, 0), channel).value().orElseThrow();
            assertThat(reading.ks()).isCloseTo(DepthOfShade.ks(0.184187), within(1e-4));
        }
        assertThat(DepthOfShade.byPhoto(new Lab(100, 0, 0), Channel.RED)
                        .value()
                        .orElseThrow()
                        .ks())
                .isCloseTo(0, within(1e-12));
    }

    @Test
    void blueClothIsReadInTheRedAndYellowClothInTheBlue() {
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(48, -5, -24), new Lab(34, -2, -25))))
                .isEqualTo(Channel.RED);
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(70, 2, 55)))).isEqualTo(Channel.BLUE);
        assertThat(DepthOfShade.darkestChannel(List.of(new Lab(43, 39, 10)))).isEqualTo(Channel.GREEN);
        assertThatThrownBy(() -> DepthOfShade.darkestChannel(List.of())).hasMessageContaining("none was given");
    }

    @Test
    void aColourWhoseDepthAPhotographCannotTellIsRefused() {
        assertThat(DepthOfShade.byPhoto(new Lab(30, -40, -40), Channel.RED).refusal())
                .contains("red channel holds no light");
        assertThat(DepthOfShade.byPhoto(new Lab(99, 20, 0), Channel.RED).refusal())
                .contains("brighter than white");
    }

    @Test
    void readingsInTwoBandsShareNoScale() {
        ShadeReading red = new ShadeReading(1.6, Channel.RED.band());
        assertThat(red.sameScale(new ShadeReading(1.6, Channel.GREEN.band()))).isFalse();
        assertThat(red.sameScale(new ShadeReading(0.1, Channel.RED.band()))).isTrue();
    }
}
