package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Currency;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.measure.LengthUnits;

class SideUnitsTest {
    private static ObjectNode sides(String length, String width) {
        ObjectNode sent = JsonNodeFactory.instance.objectNode();
        sent.put("id", "B01").put("image", "Fig").put("length", length).put("width", width);
        return sent;
    }

    private static ObjectNode read(Part<?> part, ObjectNode sent) {
        Faults faults = new Faults();
        ObjectNode stored =
                part.understood(sent, new Reading(Currency.getInstance("EUR"), LengthUnits.CM_AND_MM), faults, "");
        assertThat(faults.all()).isEmpty();
        return stored;
    }

    /** A bare number is in millimetres in a board. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "34 cm,30,width",
                "30,34 cm,length",
                "about 300,34 cm,length",
                "1 ft 2 in,300,width",
                "340 mm,300,-",
                "340,300,-",
                "34 cm,30 cm,-",
                "34 cm,forgot,-",
                "34 cm,'',-",
            })
    void aBareNumberBesideAnotherUnitIsAskedAbout(String length, String width, String asked) {
        ObjectNode sent = sides(length, width);
        Faults faults = new Faults();
        SideUnits.checkSent(sent, read(BoardPairRecord.BOARD_PAIR, sent), faults);
        assertThat(faults.all().keySet()).isEqualTo(asked == null ? Set.of() : Set.of(asked));
    }

    @Test
    void whatWasRecordedSoIsNotAskedAboutAgain() {
        ObjectNode stored = read(BoardPairRecord.BOARD_PAIR, sides("34 cm", "30"));
        Faults asked = new Faults();
        SideUnits.check(stored, null, asked);
        assertThat(asked.all()).containsOnlyKeys("width");
        Faults known = new Faults();
        SideUnits.check(stored, stored.deepCopy(), known);
        SideUnits.checkSent(stored, stored.deepCopy(), known);
        assertThat(known.all()).isEmpty();
    }
}
