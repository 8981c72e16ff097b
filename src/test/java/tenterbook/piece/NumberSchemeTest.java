package tenterbook.piece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberSchemeTest {
    private static String next(String prefix, int year, String... given) {
        return new NumberScheme(prefix).next(start -> List.of(given), year).value();
    }

    @Test
    void theNextNumberFollowsTheGreatestEverGivenInItsYear() {
        assertThat(next("V", 2024)).isEqualTo("V24-001");
        assertThat(next("V", 2024, "V24-001", "V24-002")).isEqualTo("V24-003");
        // 002 was withdrawn or never given; a gap is not filled.
        assertThat(next("V", 2024, "V24-001", "V24-007")).isEqualTo("V24-008");
        assertThat(next("V", 2025, "V24-007")).isEqualTo("V25-001");
        assertThat(next("", 2024, "24-009")).isEqualTo("24-010");
        assertThat(next("V", 2024, "V24-999")).isEqualTo("V24-1000");
        assertThat(next("V", 2024, "V24-1000", "V24-999")).isEqualTo("V24-1001");
    }

    @Test
    void numbersGivenByHandAreHeededWhateverTheirForm() {
        assertThat(next("V", 2024, "v24-012")).isEqualTo("V24-013");
        assertThat(next("Ü", 2024, "ü24-012")).isEqualTo("Ü24-013");
        assertThat(next("V", 2024, "V24-12")).isEqualTo("V24-013");
        assertThat(next("V", 2024, "V24-003a", "X24-050", "V24-", "heron")).isEqualTo("V24-001");
        // A century apart the two digits are the same, and the number must still be new.
        assertThat(next("V", 2124, "V24-005")).isEqualTo("V24-006");
    }

    @ParameterizedTest
    @CsvSource({"V24-999999999, V24-1000000000", "V24-1000000000, V24-1000000001"})
    void aHugeNumberGivenByHandIsNotGivenAgain(String given, String expected) {
        assertThat(next("V", 2024, given)).isEqualTo(expected);
    }

    @Property
    void noNumberIsEverGivenTwice(
            @ForAll @Size(max = 40) List<@IntRange(min = 2020, max = 2023) Integer> years,
            @ForAll @Size(max = 5) List<@IntRange(min = 1, max = 30) Integer> byHand) {
        List<String> given = new ArrayList<>(
                byHand.stream().distinct().map("V21-%d"::formatted).toList());
        for (int year : years) {
            String number = new NumberScheme("V").next(start -> given, year).value();
            assertThat(given).doesNotContain(number, number.toLowerCase(Locale.ROOT));
            given.add(number);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"V-", "V2", "TOOLONGX", "V V", "/"})
    void aPrefixIsUpToSixLetters(String prefix) {
        assertThatThrownBy(() -> new NumberScheme(prefix))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("up to 6 letters");
    }
}
