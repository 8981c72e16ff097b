package tenterbook.web.found;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The numbers beside the axes of a plot. */
class AxisTest {
    private static List<String> labels(Axis axis) {
        return axis.ticks().stream().map(Axis.Tick::label).toList();
    }

    private static Axis days(String first, String last) {
        return Axis.ofDays(
                LocalDate.parse(first).toEpochDay(), LocalDate.parse(last).toEpochDay());
    }

    @Test
    void numbersStepByOneTwoOrFiveAndBeginAtZeroWhereThatCostsLittle() {
        assertThat(labels(Axis.ofNumbers(1, 18))).containsExactly("0", "5", "10", "15", "20");
        assertThat(labels(Axis.ofNumbers(45, 620))).containsExactly("0", "200", "400", "600", "800");
        assertThat(labels(Axis.ofNumbers(98, 104))).containsExactly("98", "99", "100", "101", "102", "103", "104");
    }

    @Test
    void daysAreNamedAsFarAsTheyGo() {
        assertThat(labels(days("2024-02-09", "2024-12-07")))
                .containsExactly("2024-01", "2024-04", "2024-07", "2024-10", "2025-01");
        assertThat(labels(days("2021-05-01", "2024-12-07"))).containsExactly("2021", "2022", "2023", "2024", "2025");
        assertThat(labels(days("2024-02-27", "2024-03-02")))
                .containsExactly("2024-02-27", "2024-02-28", "2024-02-29", "2024-03-01", "2024-03-02");
    }

    @Test
    void oneValueAloneHasAnAxisToo() {
        assertThat(labels(Axis.ofNumbers(0, 0))).startsWith("0");
        assertThat(days("2024-02-09", "2024-02-09")
                        .along(LocalDate.parse("2024-02-09").toEpochDay()))
                .isZero();
    }

    @Property
    void everyNumberLiesOnItsAxisAndTheTicksRise(
            @ForAll @DoubleRange(min = 0, max = 1e6) double one,
            @ForAll @DoubleRange(min = 0, max = 1e6) double other) {
        holds(Axis.ofNumbers(Math.min(one, other), Math.max(one, other)), Math.min(one, other), Math.max(one, other));
    }

    @Property
    void everyDayLiesOnItsAxisAndTheTicksRise(
            @ForAll @IntRange(min = -30_000, max = 60_000) int one,
            @ForAll @IntRange(min = -30_000, max = 60_000) int other) {
        holds(Axis.ofDays(Math.min(one, other), Math.max(one, other)), Math.min(one, other), Math.max(one, other));
    }

    private static void holds(Axis axis, double low, double high) {
        double error = 1e-6 * Math.max(1, Math.abs(high));
        assertThat(axis.least()).isLessThanOrEqualTo(low + error);
        assertThat(axis.most()).isGreaterThanOrEqualTo(high - error);
        assertThat(axis.ticks()).hasSizeBetween(1, 9);
        for (int i = 1; i < axis.ticks().size(); i++) {
            assertThat(axis.ticks().get(i).at())
                    .isGreaterThan(axis.ticks().get(i - 1).at());
        }
    }
}
