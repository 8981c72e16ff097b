package tenterbook.colour.space;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.LAB;
import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.RGBColorSpaces;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.Reference;

class LabTest {
    /** The resource names how its numbers were computed: three programs that do not know ours. */
    @Test
    void screenColoursBecomeTheReferenceLab() {
        List<double[]> rows = Reference.rows("/colour/srgb_to_lab.csv");
        assertThat(rows).hasSize(18);
        for (double[] row : rows) {
            Lab lab = new Srgb((int) row[0], (int) row[1], (int) row[2]).lab();
            for (int column : new int[] {3, 6, 9}) {
                assertThat(lab.lightness()).as("L of %s", lab).isCloseTo(row[column], within(0.05));
                assertThat(lab.a()).as("a of %s", lab).isCloseTo(row[column + 1], within(0.05));
                assertThat(lab.b()).as("b of %s", lab).isCloseTo(row[column + 2], within(0.05));
            }
        }
    }

    @Property
    void anIndependentLibraryAgreesOnEveryScreenColour(
            @ForAll @IntRange(max = 255) int red,
            @ForAll @IntRange(max = 255) int green,
            @ForAll @IntRange(max = 255) int blue) {
        LAB theirs = new RGB(red / 255f, green / 255f, blue / 255f, 1, RGBColorSpaces.INSTANCE.getSRGB()).toLAB();
        Lab ours = new Srgb(red, green, blue).lab();
        assertThat(ours.lightness()).isCloseTo(theirs.getL(), within(0.05));
        assertThat(ours.a()).isCloseTo(theirs.getA(), within(0.05));
        assertThat(ours.b()).isCloseTo(theirs.getB(), within(0.05));
    }

    @Property
    void aScreenColourComesBackUnchanged(
            @ForAll @IntRange(max = 255) int red,
            @ForAll @IntRange(max = 255) int green,
            @ForAll @IntRange(max = 255) int blue) {
        Srgb colour = new Srgb(red, green, blue);
        assertThat(colour.lab().srgb()).isEqualTo(colour);
        assertThat(Srgb.parse(colour.hex())).isEqualTo(colour);
    }

    @Property
    void aGreyHasNoHue(@ForAll @IntRange(max = 255) int level) {
        assertThat(new Srgb(level, level, level).lab().chroma()).isLessThan(1e-9);
    }

    @Test
    void aColourNoScreenCanShowIsClamped() {
        Lab beyond = new Lab(50, -90, 10);
        assertThat(beyond.srgb().red()).isZero();
    }

    @Test
    void chromaAndHueFollowTheAxes() {
        assertThat(new Lab(50, 3, 4).chroma()).isEqualTo(5);
        assertThat(new Lab(50, 10, 0).hueDegrees()).isZero();
        assertThat(new Lab(50, 0, 10).hueDegrees()).isCloseTo(90, within(1e-9));
        assertThat(new Lab(50, 0, -10).hueDegrees()).isCloseTo(270, within(1e-9));
        assertThat(new Lab(50, 10, -1e-300).hueDegrees()).isBetween(0.0, 359.999999);
    }

    @Test
    void aNumberThatIsNoNumberIsRefusedByName() {
        assertThatThrownBy(() -> new Lab(Double.NaN, 0, 0)).hasMessageContaining("lightness L is NaN");
        assertThatThrownBy(() -> new Lab(0, Double.POSITIVE_INFINITY, 0)).hasMessageContaining("a is Infinity");
        assertThatThrownBy(() -> new Lab(0, 0, Double.NaN)).hasMessageContaining("b is NaN");
    }

    @Test
    void typedColoursAreReadWithAnyMinus() {
        assertThat(Lab.parse("34,\u22122,\u221225")).isEqualTo(new Lab(34, -2, -25));
        assertThat(Lab.parse(" 34.5 ; -2 ; -25 ")).isEqualTo(new Lab(34.5, -2, -25));
        assertThat(Lab.parse("34 -2 -25").text()).isEqualTo("34.0, -2.0, -25.0");
    }

    @Test
    void typedColoursThatCannotBeReadSayWhy() {
        assertThatThrownBy(() -> Lab.parse("34, -2"))
                .hasMessageContaining("three numbers were expected, 2 found")
                .hasMessageContaining("34, -2, -25");
        assertThatThrownBy(() -> Lab.parse("34,5; -2; -25")).hasMessageContaining("4 found");
        assertThatThrownBy(() -> Lab.parse("blue, 1, 2")).hasMessageContaining("\"blue\" is not a number");
        assertThatThrownBy(() -> Lab.parse("340, 1, 2")).hasMessageContaining("L is 0 to 100, found 340");
        assertThatThrownBy(() -> Lab.parse("34, NaN, 2")).hasMessageContaining("a is -150 to 150");
        assertThatThrownBy(() -> Lab.parse(null)).hasMessageContaining("0 found");
    }

    @Test
    void screenColoursOutOfRangeOrMistypedAreRefused() {
        assertThat(Srgb.parse(" 1C395E ").hex()).isEqualTo("#1c395e");
        assertThatThrownBy(() -> Srgb.parse("#1c39")).hasMessageContaining("\"#1c39\"");
        assertThatThrownBy(() -> Srgb.parse(null)).hasMessageContaining("six hexadecimal digits");
        assertThatThrownBy(() -> new Srgb(0, 256, 0))
                .hasMessageContaining("green")
                .hasMessageContaining("256");
    }

    @Test
    void aRoundedNoughtHasNoMinusAndHalvesGoUp() {
        assertThat(new Lab(50, -0.04, -0.05).text()).isEqualTo("50.0, 0.0, -0.1");
        assertThat(new Lab(49.5, -0.4, -0.5).text(0)).isEqualTo("50, 0, -1");
        assertThat(Decimals.signed(-0.04, 1)).isEqualTo("0.0");
        assertThat(Decimals.signed(0.05, 1)).isEqualTo("+0.1");
        assertThat(Decimals.signed(-3.25, 1)).isEqualTo("-3.3");
    }
}
