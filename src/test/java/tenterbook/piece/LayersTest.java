package tenterbook.piece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.recipe.LayerMap;

class LayersTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3 | 3",
                "1-8 | 1 2 3 4 5 6 7 8",
                "1 to 4, 7 | 1 2 3 4 7",
                "1–3 | 1 2 3",
                "layers 2 and 5 | 2 5",
                "7; 1-2 | 1 2 7",
                "4 4 4 | 4",
                "layer 1024 | 1024"
            })
    void layerAddressesAreReadRisingAndOnce(String text, String layers) {
        Layers read = Layers.read(text);

        assertThat(read.layers())
                .isEqualTo(
                        Arrays.stream(layers.split(" ")).map(Integer::valueOf).toList());
        assertThat(read.all()).isFalse();
        assertThat(read.entered()).isEqualTo(text);
    }

    @Test
    void allAndForgotAreNotTheSame() {
        assertThat(Layers.read("All")).isEqualTo(new Layers("All", List.of(), true));
        assertThat(Layers.read("forgot")).isEqualTo(new Layers("forgot", List.of(), false));
        assertThat(Layers.read(" ")).isEqualTo(Layers.UNRECORDED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "0-3",
                "8-1",
                "1-99999999",
                "1-9999",
                "1025",
                "a",
                "1-2-3",
                "-3",
                "1,,2",
                "1.5",
                "layers",
                "1-",
                "99999999999999999999"
            })
    void whatIsNoLayerOfAnyStackIsRefused(String text) {
        assertThatThrownBy(() -> Layers.read(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("“" + text + "” was not understood as layers");
    }

    @Test
    void aLongTextOfLongRangesNeitherFillsTheMemoryNorTakesLong() {
        org.junit.jupiter.api.Assertions.assertTimeout(Duration.ofSeconds(2), () -> {
            assertThatThrownBy(() -> Layers.read("1-1024,".repeat(20_000) + "1"))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> Layers.read("1" + " ".repeat(50_000) + "x"))
                    .isInstanceOf(IllegalArgumentException.class);
        });
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.oneOf(
                Arbitraries.strings().withChars("0123456789-–, ;to").ofMaxLength(30),
                Arbitraries.of("1", "8", "-", " to ", ",", " and ", "layers", "all", "1024", " ")
                        .list()
                        .ofMaxSize(8)
                        .map(parts -> String.join("", parts)),
                Arbitraries.strings().all().ofMaxLength(300));
    }

    @Property(tries = 10_000)
    void anyTextIsReadAsItStandsOrRefused(@ForAll("texts") String text) {
        Layers read;
        try {
            read = Layers.read(text);
        } catch (IllegalArgumentException refused) {
            assertThat(refused).hasMessageContaining("was not understood as layers");
            return;
        }
        assertThat(read.entered()).isEqualTo(text.strip());
        assertThat(read.layers()).isSorted().doesNotHaveDuplicates().allMatch(n -> n >= 1 && n <= LayerMap.MOST_LAYERS);
    }
}
