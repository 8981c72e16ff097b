package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.piece.agreement.Agreement;

/** What a gallery owes, exact to the smallest unit of the currency (ISO 4217: EUR has two decimals, JPY none). */
class SettlementTest {
    private static <T> T read(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static String day(String day) {
        return "{'entered': '%1$s', 'from': '%1$s', 'to': '%1$s'}".formatted(day);
    }

    private static String money(String amount, String currency) {
        return "{'amount': '%s', 'currency': '%s'}".formatted(amount, currency);
    }

    private static String event(String kind, String day, String more) {
        return "{'kind': '%s', 'when': %s%s}".formatted(kind, day(day), more);
    }

    private static Piece piece(String number, String... events) {
        return read(Kinds.PIECE, "{'number': '" + number + "', 'events': [" + String.join(", ", events) + "]}");
    }

    private static Agreement agreement(String more) {
        return read(
                Kinds.AGREEMENT,
                "{'id': 'A24-001', 'kind': 'consignment', 'party': 'sala', 'from': " + day("2024-05-01") + more + "}");
    }

    private static final String AT_45 = ", 'commission': {'entered': '45 %', 'low': 45, 'high': 45, 'unit': 'percent'}";

    private static Piece sold(String price) {
        return piece(
                "V24-001",
                event("consigned", "2024-05-01", ", 'party': 'sala'"),
                event("sold", "2024-06-01", ", 'price': " + price));
    }

    @Test
    void theCommissionIsTakenFromThePriceToTheCent() {
        // 45 % of 1,104.55 is 497.0475, rounded 497.05; 607.50 is left.
        Settlement settlement = Settlement.of(agreement(AT_45), List.of(sold(money("1104.55", "EUR"))));
        assertThat(settlement.sales()).singleElement().satisfies(sale -> {
            assertThat(sale.commission()).hasToString("497.05\u00a0EUR");
            assertThat(sale.due()).hasToString("607.50\u00a0EUR");
        });
        assertThat(settlement.owed()).isTrue();
    }

    @Test
    void aCurrencyWithoutDecimalsIsRoundedToWholeUnits() {
        Settlement settlement = Settlement.of(agreement(AT_45), List.of(sold(money("1001", "JPY"))));
        assertThat(settlement.sales().get(0).due()).hasToString("551\u00a0JPY");
    }

    @Test
    void paymentsAndRefundsAreCounted() {
        String paid = ", 'payments': [{'kind': 'paid', 'amount': " + money("600", "EUR")
                + "}, {'kind': 'refunded', 'amount': " + money("10.25", "EUR") + "}]";
        Settlement settlement = Settlement.of(agreement(AT_45 + paid), List.of(sold(money("1104.55", "EUR"))));
        assertThat(settlement.balances()).singleElement().satisfies(balance -> {
            assertThat(balance.sign()).isEqualTo(1);
            assertThat(balance.size()).hasToString("17.75\u00a0EUR");
        });
        String all = ", 'payments': [{'kind': 'paid', 'amount': " + money("607.50", "EUR") + "}]";
        assertThat(Settlement.of(agreement(AT_45 + all), List.of(sold(money("1104.55", "EUR"))))
                        .owed())
                .isFalse();
    }

    @Test
    void whatIsNotKnownIsNotZero() {
        assertThat(Settlement.of(agreement(""), List.of(sold(money("100", "EUR"))))
                        .known())
                .isFalse();
        Piece noPrice = piece(
                "V24-001", event("consigned", "2024-05-01", ", 'party': 'sala'"), event("sold", "2024-06-01", ""));
        Settlement settlement = Settlement.of(agreement(AT_45), List.of(noPrice));
        assertThat(settlement.known()).isFalse();
        assertThat(settlement.owed()).isTrue();
        assertThat(settlement.sales().get(0).due()).isNull();
    }

    @Test
    void onlyWhatThatGallerySoldIsOwedByIt() {
        Piece back = piece(
                "V24-001",
                event("consigned", "2024-05-01", ", 'party': 'sala'"),
                event("returned", "2024-05-20", ""),
                event("sold", "2024-06-01", ", 'price': " + money("100", "EUR")));
        Piece elsewhere = piece(
                "V24-002",
                event("consigned", "2024-05-01", ", 'party': 'loja'"),
                event("sold", "2024-06-01", ", 'price': " + money("100", "EUR")));
        Piece again = piece(
                "V24-003",
                event("consigned", "2025-05-01", ", 'party': 'sala'"),
                event("sold", "2025-06-01", ", 'price': " + money("100", "EUR")));
        assertThat(Settlement.of(agreement(AT_45), List.of(back, elsewhere, again))
                        .sales())
                .isEmpty();
    }
}
