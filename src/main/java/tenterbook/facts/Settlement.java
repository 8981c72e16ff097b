package tenterbook.facts;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.agreement.Payment;
import tenterbook.piece.agreement.PaymentKind;
import tenterbook.piece.history.Custody;

/**
 * What a seller owes the maker by a consignment: of each piece sold while it was there, the price without the commission; less
 * what was paid, plus what was refunded. A commission is rounded to the currency's smallest unit, halves away from zero (common
 * practice).
 *
 * @param sales in order of time
 * @param balances by currency, what is still owed; negative where too much was paid
 * @param known whether the price of each sale and the commission are recorded; otherwise balances are of those that are
 */
public record Settlement(List<Sale> sales, List<Balance> balances, boolean known) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /**
     * A piece sold by the other party.
     *
     * @param price as recorded with the sale, else null
     * @param commission null where it cannot be computed, as is {@code due}
     */
    public record Sale(
            PieceNumber piece,
            PartialDate when,
            @Nullable Money price,
            @Nullable Money commission,
            @Nullable Money due) {}

    /** An amount that may be negative, in whole units with the currency's decimals. */
    public record Balance(BigDecimal amount, Currency currency) {
        public Money size() {
            return new Money(amount.abs(), currency);
        }

        public int sign() {
            return amount.signum();
        }
    }

    /** @param pieces of the agreement, as they are now */
    public static Settlement of(Agreement agreement, List<Piece> pieces) {
        List<Sale> sales = new ArrayList<>();
        if (agreement.kind() == AgreementKind.CONSIGNMENT) {
            pieces.forEach(piece -> sold(agreement, piece, sales));
        }
        sales.sort(Comparator.comparing(
                (Sale sale) -> sale.when().from(), Comparator.nullsLast(Comparator.naturalOrder())));
        Map<Currency, BigDecimal> totals = new TreeMap<>(Comparator.comparing(Currency::getCurrencyCode));
        for (Sale sale : sales) {
            if (sale.due() != null) {
                totals.merge(sale.due().currency(), sale.due().amount(), BigDecimal::add);
            }
        }
        for (Payment payment : agreement.payments()) {
            BigDecimal amount = payment.amount().amount();
            totals.merge(
                    payment.amount().currency(),
                    payment.kind() == PaymentKind.PAID ? amount.negate() : amount,
                    BigDecimal::add);
        }
        List<Balance> balances = totals.entrySet().stream()
                .map(entry -> new Balance(entry.getValue(), entry.getKey()))
                .toList();
        return new Settlement(List.copyOf(sales), balances, sales.stream().allMatch(sale -> sale.due() != null));
    }

    /** Whether anything is still owed to the maker. */
    public boolean owed() {
        return balances.stream().anyMatch(balance -> balance.sign() > 0) || !known;
    }

    /** The sales of a piece between its going to the party and its coming back. */
    private static void sold(Agreement agreement, Piece piece, List<Sale> sales) {
        boolean there = false;
        for (Event event : Custody.inTime(piece.events())) {
            if (event.kind() == EventKind.CONSIGNED) {
                there = agreement.party() != null
                        && agreement.party().equals(event.party())
                        && begins(agreement, event);
            } else if (event.kind() == EventKind.RETURNED) {
                there = false;
            } else if (event.kind() == EventKind.SOLD && there) {
                sales.add(sale(agreement, piece, event));
                there = false;
            }
        }
    }

    /** Two agreements with one gallery are told apart by the day on which the piece went there. */
    private static boolean begins(Agreement agreement, Event consigned) {
        return !agreement.from().known()
                || !consigned.when().known()
                || agreement.from().equals(consigned.when());
    }

    private static Sale sale(Agreement agreement, Piece piece, Event event) {
        Money price = event.price();
        Quantity percent = agreement.commission();
        if (price == null || !percent.bounded() || percent.isRange() || percent.about()) {
            return new Sale(piece.number(), event.when(), price, null, null);
        }
        int decimals = Math.max(0, price.currency().getDefaultFractionDigits());
        BigDecimal kept = price.amount()
                .multiply(BigDecimal.valueOf(percent.low()))
                .divide(HUNDRED, decimals, RoundingMode.HALF_UP);
        return new Sale(
                piece.number(),
                event.when(),
                price,
                new Money(kept, price.currency()),
                new Money(price.amount().subtract(kept), price.currency()));
    }
}
