package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.recipe.Clamping;

class LotStockTest {
    private static final Cloth CLOTH = record(
            Kinds.CLOTH,
            "{'id': 'LV', 'arealWeight': {'entered': '100 g/m²', 'low': 100, 'high': 100,"
                    + " 'unit': 'gram-per-square-metre'}}");

    private static <T> T record(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static String grams(double low, double high) {
        return "{'entered': 'x', 'low': " + low + ", 'high': " + high + ", 'unit': 'gram'}";
    }

    private static Lot weld(String more) {
        return record(Kinds.LOT, "{'id': 'weld', 'role': 'dye', 'name': 'weld'" + more + "}");
    }

    /** @param charge further fields of the charge */
    private static Clamping used(String charge) {
        return record(
                Kinds.CLAMPING,
                "{'id': 'C24-001', 'cuts': [{'cloth': 'LV',"
                        + " 'length': {'entered': '1 m', 'low': 1, 'high': 1, 'unit': 'metre'},"
                        + " 'width': {'entered': '1 m', 'low': 1, 'high': 1, 'unit': 'metre'}}],"
                        + " 'steps': [{'kind': 'bath', 'charges': [{'lot': 'weld'" + charge + "}]}]}");
    }

    private static LotStock stock(Lot lot, Clamping... clampings) {
        return LotStock.of(lot, List.of(clampings), Map.of(new ClothId("LV"), CLOTH));
    }

    private static String words(LotStock stock) {
        return stock.words().inEnglish().replace('\u00a0', ' ');
    }

    /** 500 g less 34 g weighed and 40 % of 100 g of cloth. */
    @Test
    void whatIsLeftIsWhatWasBoughtLessWhatIsRecordedAsUsed() {
        Lot lot = weld(", 'bought': " + grams(500, 500) + ", 'warnBelow': " + grams(430, 430));
        LotStock stock = stock(
                lot,
                used(", 'weighed': " + grams(34, 34)),
                used(", 'wof': {'entered': '40 %', 'low': 40, 'high': 40, 'unit': 'percent'}"));
        assertThat(words(stock)).isEqualTo("426 g");
        assertThat(stock.low()).isTrue();
        assertThat(stock(lot, used(", 'weighed': " + grams(70, 70))).low()).isFalse();
        LotStock range = stock(lot, used(", 'weighed': " + grams(60, 80)));
        assertThat(words(range)).isEqualTo("420–440 g");
        assertThat(range.low()).as("it may be less").isTrue();
        String about = grams(30, 30).replace("}", ", 'about': true}");
        assertThat(words(stock(lot, used(", 'weighed': " + about)))).isEqualTo("about 470 g");
    }

    @Test
    void anUnknownUseOrAmountGivesNoFigureAndSaysWhy() {
        Lot lot = weld(", 'bought': " + grams(500, 500) + ", 'warnBelow': " + grams(490, 490));
        LotStock unweighed = stock(lot, used(""));
        assertThat(words(unweighed)).startsWith("cannot be known: How much clamping C24-001 used:");
        assertThat(unweighed.low()).isFalse();
        assertThat(words(stock(weld(""), used(", 'weighed': " + grams(34, 34)))))
                .isEqualTo("cannot be known: How much was bought is not a known amount.");
        assertThat(words(stock(lot, used(", 'weighed': " + grams(600, 600)))))
                .isEqualTo("cannot be known: More is recorded as used than was bought.");
    }
}
