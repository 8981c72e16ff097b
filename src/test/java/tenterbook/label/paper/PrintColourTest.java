package tenterbook.label.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.colour.Lab;
import tenterbook.label.layout.Tone;

class PrintColourTest {
    static Stream<double[]> known() {
        return new BufferedReader(new InputStreamReader(
                        PrintColourTest.class.getResourceAsStream("/label/srgb_lab_d65.csv"), StandardCharsets.UTF_8))
                .lines()
                .filter(line -> !line.startsWith("#") && !line.startsWith("R,"))
                .map(line -> Stream.of(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray());
    }

    /** Reference: colorjs.io, lab-d65, stated in the table. */
    @ParameterizedTest
    @MethodSource("known")
    void aMeasuredColourIsPrintedAsTheSrgbColourItIs(double[] row) {
        Tone tone = PrintColour.of(new Lab(row[3], row[4], row[5]));
        assertThat((double) tone.red()).isCloseTo(row[0], within(1.0));
        assertThat((double) tone.green()).isCloseTo(row[1], within(1.0));
        assertThat((double) tone.blue()).isCloseTo(row[2], within(1.0));
    }

    @Test
    void aColourOutsideSrgbStaysWithinTheScale() {
        Tone tone = PrintColour.of(new Lab(50, -120, 100));
        assertThat(tone.red()).isZero();
        assertThat(tone.green()).isBetween(0, 255);
    }
}
