package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.Basis;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Piece;
import tenterbook.piece.cost.Costing;
import tenterbook.piece.cost.PieceCost;
import tenterbook.piece.cost.Pricing;
import tenterbook.recipe.Clamping;

class MaterialShareTest {
    private static <T> T record(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static Clamping clamping(String id, String materials) {
        return record(Kinds.CLAMPING, "{'id': '" + id + "'" + materials + "}");
    }

    private static String euros(String amount) {
        return ", 'materials': {'amount': '" + amount + "', 'currency': 'EUR'}";
    }

    private static String side(String name, int cm) {
        return ", '" + name + "': {'entered': 'x', 'low': " + cm + ", 'high': " + cm + ", 'unit': 'centimetre'}";
    }

    private static Piece piece(String number, int length, int width, String more) {
        return record(
                Kinds.PIECE,
                "{'number': '" + number + "', 'made': [{'clamping': 'C24-001'}]" + side("length", length)
                        + side("width", width) + more + "}");
    }

    private static MaterialShare share(Piece piece, String whole, Piece... all) {
        return MaterialShare.of(piece, List.of(clamping("C24-001", whole)), clamping -> List.of(all));
    }

    private static Money amount(MaterialShare share) {
        assertThat(share.missing()).isNull();
        return share.amount();
    }

    /** 38 + 14 × 32 = 486; × 1.25 = 607.50; of 1104.55 a seller keeps 45 %. */
    @Test
    void twoPiecesOfOneSizeShareTheirClothAndTheExampleComesOut() {
        Piece one = piece("V24-001", 180, 90, "");
        Money materials = amount(share(one, euros("76"), one, piece("V24-002", 90, 180, "")));
        assertThat(materials.amount()).isEqualByComparingTo("38.00");
        Costing costing = Costing.of(
                new PieceCost(Quantity.between(14, 14, Unit.HOUR, Basis.UNKNOWN), materials),
                new Pricing(
                        Money.read("32 EUR", materials.currency()),
                        Quantity.between(25, 25, Unit.PERCENT, Basis.UNKNOWN),
                        Quantity.between(45, 45, Unit.PERCENT, Basis.UNKNOWN)));
        assertThat(costing.cost().low().amount()).isEqualByComparingTo("486.00");
        assertThat(costing.price().low().amount()).isEqualByComparingTo("607.50");
        assertThat(costing.retail().low().amount()).isEqualByComparingTo("1104.55");
    }

    @Test
    void sharesAddUpToTheWholeToTheCent() {
        Piece[] all = {piece("V24-001", 10, 10, ""), piece("V24-002", 10, 10, ""), piece("V24-003", 10, 10, "")};
        assertThat(List.of(all).stream()
                        .map(each ->
                                amount(share(each, euros("100"), all)).amount().toString()))
                .containsExactly("33.34", "33.33", "33.33");
        Piece[] unlike = {piece("V24-001", 30, 10, ""), piece("V24-002", 10, 10, "")};
        assertThat(amount(share(unlike[0], euros("10"), unlike)).amount()).isEqualByComparingTo("7.50");
    }

    @Test
    void whatIsRecordedByHandIsTakenAwayFirst() {
        Piece byHand = piece("V24-002", 50, 50, euros("40"));
        Piece other = piece("V24-001", 10, 10, "");
        assertThat(amount(share(other, euros("100"), other, byHand)).amount()).isEqualByComparingTo("60.00");
        assertThat(share(other, euros("30"), other, byHand).missing().inEnglish())
                .contains("more than 30");
    }

    @Test
    void withoutTheSizesOrACostNothingIsComputed() {
        Piece one = piece("V24-001", 10, 10, "");
        Piece unmeasured = record(Kinds.PIECE, "{'number': 'V24-002', 'made': [{'clamping': 'C24-001'}]}");
        MaterialShare share = share(one, euros("100"), one, unmeasured);
        assertThat(share.amount()).isNull();
        assertThat(share.missing().inEnglish()).contains("length and width are needed of V24-002");
        assertThat(share(one, "", one)).isEqualTo(new MaterialShare(null, null, null));
        assertThat(MaterialShare.of(
                                one,
                                List.of(clamping("C24-001", euros("9")), clamping("C24-002", "")),
                                clamping -> List.of(one))
                        .missing()
                        .inEnglish())
                .contains("clamping C24-002 have no recorded cost");
    }
}
