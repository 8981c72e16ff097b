package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.piece.Layers;

class PortugueseTextTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "6 a 8 cm | 6 to 8 cm | MILLIMETRE",
                "cerca de 40 min | about 40 min | HOUR",
                "cerca de 6 a 8 | about 6 to 8 | COUNT",
                "pelo menos 5 | at least 5 | COUNT",
                "até 5 | up to 5 | COUNT",
                "5 e 6 | 5 and 6 | COUNT",
                "1,5 m medido | 1.5 m measured | CENTIMETRE",
                "2 noites | 2 night | MINUTE",
                "3 horas, de memória | 3 hours, from memory | MINUTE"
            })
    void aQuantityIsReadAsItsEnglishTwin(String portuguese, String english, Unit usual) {
        Quantity read = QuantityText.read(portuguese, usual);
        Quantity twin = QuantityText.read(english, usual);
        assertThat(read.low()).isEqualTo(twin.low());
        assertThat(read.high()).isEqualTo(twin.high());
        assertThat(read.unit()).isEqualTo(twin.unit());
        assertThat(read.basis()).isEqualTo(twin.basis());
        assertThat(read.about()).isEqualTo(twin.about());
    }

    @Test
    void whatWasForgottenIsNotRecordedAsZero() {
        assertThat(QuantityText.read("esqueci", Unit.GRAM).known()).isFalse();
        assertThat(DateText.read("esqueci").known()).isFalse();
        assertThat(DateText.read("não sei").entered()).isEqualTo("não sei");
    }

    @ParameterizedTest
    @CsvSource({
        "14 de março de 2024, 2024-03-14, 2024-03-14",
        "março de 2024, 2024-03-01, 2024-03-31",
        "Maio 2024, 2024-05-01, 2024-05-31",
        "primavera de 2021, 2021-03-01, 2021-05-31",
        "cerca de 2019, 2019-01-01, 2019-12-31",
        "2019 a 2021, 2019-01-01, 2021-12-31"
    })
    void aDateIsReadAsItIsSaidInPortuguese(String text, LocalDate from, LocalDate to) {
        PartialDate read = DateText.read(text);
        assertThat(read.from()).isEqualTo(from);
        assertThat(read.to()).isEqualTo(to);
        assertThat(read.about()).isEqualTo(text.startsWith("cerca"));
    }

    @Test
    void layersAreReadToo() {
        assertThat(Layers.read("todas").all()).isTrue();
        assertThat(Layers.read("1 a 4").layers()).containsExactly(1, 2, 3, 4);
    }
}
