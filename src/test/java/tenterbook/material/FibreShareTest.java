package tenterbook.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.measure.Quantity;

class FibreShareTest {
    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 100.1, Double.NaN, Double.POSITIVE_INFINITY})
    void aShareIsAboveNothingAndAtMostAll(double percent) {
        assertThatThrownBy(() -> new FibreShare("silk", percent, ""))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("for silk");
    }

    @Test
    void aShareNobodyKnowsStaysUnknown() {
        assertThat(new FibreShare(" silk ", null, null)).isEqualTo(new FibreShare("silk", null, ""));
        assertThat(new FibreShare("elastane", 100.0, "stretch").percent()).isEqualTo(100);
    }

    @Test
    void aBoltAndALotNeedOnlyTheirNames() {
        Cloth cloth = new Cloth(
                new ClothId("SH"), null, null, null, null, null, null, null, null, null, null, null, null, null);
        assertThat(cloth.content()).isEqualTo(List.of());
        assertThat(cloth.arealWeight()).isEqualTo(Quantity.UNRECORDED);
        assertThat(cloth.title()).isEqualTo("SH");

        Lot lot = new Lot(
                new LotId("woad-2024"),
                Role.DYE,
                "woad",
                null,
                null,
                null,
                null,
                "7",
                null,
                null,
                null,
                null,
                null,
                null);
        assertThat(lot.source()).isNull();
        assertThat(lot.title()).isEqualTo("woad, lot 7");
    }
}
