package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.Srgb;

class WhitePointTest {
    /** Expected: columns d50_* of the resource, from culori 4.0.2 (Bradford), which does not know our program. */
    @Test
    void screenColoursUnderD50AreThoseOfAnotherLibrary() throws IOException {
        List<double[]> rows;
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                getClass().getResourceAsStream("/colour/srgb_to_lab.csv"), StandardCharsets.UTF_8))) {
            rows = reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("R"))
                    .map(line -> java.util.stream.Stream.of(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        }
        assertThat(rows).hasSize(18);
        for (double[] row : rows) {
            Lab d65 = new Srgb((int) row[0], (int) row[1], (int) row[2]).lab();
            near(WhitePoint.D65.adapt(d65, WhitePoint.D50), row[12], row[13], row[14], 0.05);
        }
    }

    @Property
    void thereAndBackIsWhereItWas(
            @ForAll @IntRange(max = 100) int L,
            @ForAll @IntRange(min = -90, max = 90) int a,
            @ForAll @IntRange(min = -90, max = 90) int b) {
        Lab lab = new Lab(L, a, b);
        Lab back = WhitePoint.D50.adapt(WhitePoint.D65.adapt(lab, WhitePoint.D50), WhitePoint.D65);
        near(back, L, a, b, 1e-6);
        near(LinearRgb.of(lab).lab(), L, a, b, 1e-6);
    }

    @Test
    void whiteAndGreysStayWithoutHue() {
        near(WhitePoint.D65.adapt(new Lab(100, 0, 0), WhitePoint.D50), 100, 0, 0, 1e-9);
        near(WhitePoint.D50.adapt(new Lab(50, 0, 0), WhitePoint.D65), 50, 0, 0, 1e-9);
    }

    private static void near(Lab lab, double L, double a, double b, double by) {
        assertThat(lab.lightness()).as("L of %s", lab).isCloseTo(L, within(by));
        assertThat(lab.a()).as("a of %s", lab).isCloseTo(a, within(by));
        assertThat(lab.b()).as("b of %s", lab).isCloseTo(b, within(by));
    }
}
