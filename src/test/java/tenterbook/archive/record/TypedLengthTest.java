package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Reading;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;

/** A length without a unit is in the studio's, and stays in the unit in which it was once understood. An inch is 25.4 mm (international yard and pound, 1959). */
class TypedLengthTest {
    private static final Currency EURO = Currency.getInstance("EUR");

    @ParameterizedTest
    @CsvSource({"CM_AND_MM, CENTIMETRE, MILLIMETRE", "CENTIMETRES, CENTIMETRE, CENTIMETRE", "INCHES, INCH, INCH"})
    void aBareNumberHasTheUnitOfTheStudio(LengthUnits units, Unit cloth, Unit boards) {
        Reading reading = new Reading(EURO, units);
        assertThat(Measures.CLOTH_LENGTH.parse("30", reading).unit()).isEqualTo(cloth);
        assertThat(Measures.BOARD_LENGTH.parse("30", reading).unit()).isEqualTo(boards);
        assertThat(Measures.BOARD_LENGTH.parse("30 ft", reading).unit()).isEqualTo(Unit.FOOT);
    }

    @Test
    void whatIsStoredIsShownSoThatItIsReadAsTheSame() {
        Quantity stored = Measures.CLOTH_LENGTH.parse("about 30 to 32", new Reading(EURO, LengthUnits.CENTIMETRES));
        assertThat(Measures.CLOTH_LENGTH.text(stored, LengthUnits.CENTIMETRES)).isEqualTo("about 30 to 32");
        for (LengthUnits units : LengthUnits.values()) {
            String shown = Measures.CLOTH_LENGTH.text(stored, units);
            Quantity again = Measures.CLOTH_LENGTH.parse(shown, new Reading(EURO, units));
            assertThat(again.unit()).as(shown).isEqualTo(Unit.CENTIMETRE);
            assertThat(again.low()).isEqualTo(30);
            assertThat(again.high()).isEqualTo(32);
            assertThat(again.about()).isTrue();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "CM_AND_MM, 12.5, 12.5",
        "CM_AND_MM, -3, -3",
        "CENTIMETRES, 1.1, 11",
        "CENTIMETRES, 12.5 mm, 12.5",
        "INCHES, 1/2, 12.7",
        "INCHES, 2 cm, 20"
    })
    void thePlaceOfAHoleIsStoredInMillimetres(LengthUnits units, String typed, double stored) {
        assertThat(HolePlace.TYPED.parse(typed, new Reading(EURO, units))).isEqualTo(stored);
        String shown = HolePlace.TYPED.text(stored, units);
        assertThat(HolePlace.TYPED.parse(shown, new Reading(EURO, units))).isEqualTo(stored);
    }

    @Test
    void aProgramsNumberForAHoleIsInMillimetresWhateverTheStudioTypes() {
        ObjectNode board = RecordCodec.parsed(
                "{\"id\": \"B01\", \"length\": \"30\", \"states\": [{\"name\": \"I\", \"holes\": [{\"name\": \"1\", \"acrossMm\": 12.5}]}]}");
        Faults faults = new Faults();
        ObjectNode stored =
                BoardPairRecord.BOARD_PAIR.understood(board, new Reading(EURO, LengthUnits.INCHES), faults, "");
        assertThat(faults.isEmpty()).isTrue();
        assertThat(stored.at("/states/0/holes/0/acrossMm").doubleValue()).isEqualTo(12.5);
        assertThat(stored.at("/length/unit").textValue()).isEqualTo("inch");
    }
}
