package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;

/** Shares of the hours of a clamping; the expected ones are worked out by hand. */
class HourShareTest {
    private static <T> T record(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static String hours(double low, double high) {
        return ", 'hours': {'entered': '', 'low': " + low + ", 'high': " + high + ", 'unit': 'hour'}";
    }

    private static Piece piece(String number, int length, String more) {
        return record(
                Kinds.PIECE,
                "{'number': '" + number
                        + "', 'made': [{'clamping': 'C24-001'}], 'width': {'entered': '10 cm', 'low': 10, 'high': 10, 'unit': 'centimetre'}"
                        + (length == 0
                                ? ""
                                : ", 'length': {'entered': '" + length + " cm', 'low': " + length + ", 'high': "
                                        + length + ", 'unit': 'centimetre'}")
                        + more + "}");
    }

    private static HourShare share(Piece piece, String whole, Piece... all) {
        Clamping clamping = record(Kinds.CLAMPING, "{'id': 'C24-001'" + whole + "}");
        return HourShare.of(piece, List.of(clamping), each -> List.of(all));
    }

    private static Quantity minutes(HourShare share) {
        assertThat(share.missing()).isNull();
        return share.hours().in(Unit.MINUTE);
    }

    /** 7 h = 420 min over 10 : 20 : 30; and 1 h 40 min = 100 min over three alike, the first having the odd minute. */
    @Test
    void theyGoByAreaToTheMinuteAndAddUp() {
        Piece[] all = {piece("V24-001", 10, ""), piece("V24-002", 20, ""), piece("V24-003", 30, "")};
        assertThat(Stream.of(all)
                        .map(each -> minutes(share(each, hours(7, 7), all)).low()))
                .containsExactly(70.0, 140.0, 210.0);
        Piece[] alike = {piece("V24-001", 10, ""), piece("V24-002", 10, ""), piece("V24-003", 10, "")};
        String whole = ", 'hours': {'entered': '100 min', 'low': 100, 'high': 100, 'unit': 'minute'}";
        assertThat(Stream.of(alike)
                        .map(each -> minutes(share(each, whole, alike)).low()))
                .containsExactly(34.0, 33.0, 33.0);
    }

    /** 12 to 16 h less 2 h by hand: 10 to 14 h over 1 : 1. */
    @Test
    void whatIsTypedWithAPieceIsItsOwnAndARangeStaysOne() {
        Piece own = piece("V24-001", 0, hours(2, 2));
        Piece one = piece("V24-002", 10, "");
        Piece two = piece("V24-003", 10, "");
        assertThat(minutes(share(own, hours(12, 16), own, one, two)).low()).isEqualTo(120);
        Quantity rest = minutes(share(one, hours(12, 16), own, one, two));
        assertThat(rest.low()).isEqualTo(300);
        assertThat(rest.high()).isEqualTo(420);
    }

    @Test
    void aShareOfAboutSoMuchIsAboutSoMuch() {
        Piece one = piece("V24-001", 10, "");
        Piece two = piece("V24-002", 10, "");
        String whole = ", 'hours': {'entered': 'about 7 h', 'low': 7, 'high': 7, 'unit': 'hour', 'about': true}";
        assertThat(share(one, whole, one, two).hours().inEnglish()).isEqualTo("about 210\u00a0min");
    }

    /** A night has no fixed length. */
    @Test
    void nightsGiveAReasonInPlaceOfAShare() {
        Piece one = piece("V24-001", 10, "");
        String nights = ", 'hours': {'entered': '3 nights', 'low': 3, 'high': 3, 'unit': 'night'}";
        assertThat(share(one, nights, one, piece("V24-002", 10, "")).missing().inEnglish())
                .contains("hours of clamping C24-001 are not recorded as a number");
        assertThat(share(one, hours(4, 4), one, piece("V24-002", 10, nights))
                        .missing()
                        .inEnglish())
                .contains("recorded with V24-002");
    }

    @Test
    void thereIsAReasonWhereThereIsNoShare() {
        Piece one = piece("V24-001", 10, "");
        Piece unmeasured = piece("V24-002", 0, "");
        assertThat(share(one, hours(4, 4), one, unmeasured).missing().inEnglish())
                .isEqualTo("No share of clamping C24-001 is computed: length and width are needed of V24-002.");
        Piece own = piece("V24-003", 10, hours(5, 5));
        assertThat(share(one, hours(4, 4), one, own).missing().inEnglish())
                .contains("more than those of clamping C24-001");
        assertThat(share(one, "", one)).isEqualTo(new HourShare(Quantity.UNRECORDED, null, null));
        Piece forgot = record(
                Kinds.PIECE,
                "{'number': 'V24-004', 'made': [{'clamping': 'C24-001'}], 'hours': {'entered': 'forgot'}}");
        assertThat(share(one, hours(4, 4), one, forgot).missing().inEnglish()).contains("recorded with V24-004");
    }
}
