package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.measure.DateWords;
import tenterbook.measure.Money;
import tenterbook.piece.Event;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.cost.SaleTax;
import tenterbook.piece.cost.TaxWay;
import tenterbook.piece.history.Act;
import tenterbook.web.Site;

/** The text of a receipt, made of sales as they are recorded now; it is not kept. */
final class Receipt {
    /** A piece and its sale; null where none is recorded. */
    private record Sold(Piece piece, @Nullable Event sale) {
        SaleTax tax() {
            return sale == null ? SaleTax.UNRECORDED : sale.tax();
        }

        @Nullable
        Money price() {
            return sale == null ? null : sale.price();
        }

        /** To the same person on the same day; where either is not recorded, nothing says that two were sold together. */
        boolean togetherWith(Event other) {
            return sale != null
                    && sale.party() != null
                    && sale.party().equals(other.party())
                    && sale.when().recorded()
                    && sale.when().equals(other.when());
        }
    }

    private final Site site;
    private final List<Sold> sold;

    private Receipt(Site site, List<Sold> sold) {
        this.site = site;
        this.sold = sold;
    }

    /** Of the last sale recorded for each piece. */
    static String ofLast(Site site, List<Piece> pieces, String buyer) {
        List<Sold> sold = pieces.stream()
                .map(piece -> new Sold(
                        piece,
                        sales(piece).stream().reduce((first, second) -> second).orElse(null)))
                .toList();
        return new Receipt(site, sold).text(buyer, "");
    }

    /** Of one sale and of what the same person bought on the same day, with today's day and whether it replaces another. */
    static String of(Site site, Piece piece, Event sale) {
        List<Sold> together = new ArrayList<>(List.of(new Sold(piece, sale)));
        site.records(Kinds.PIECE).stream()
                .filter(other -> !other.number().equals(piece.number()))
                .flatMap(other -> sales(other).stream().map(its -> new Sold(other, its)))
                .filter(each -> each.togetherWith(sale))
                .forEach(together::add);
        together.sort(Comparator.comparing(each -> each.piece().shown().value()));
        Party party = sale.party() == null
                ? null
                : site.archive().party(sale.party().value()).orElse(null);
        boolean corrected = together.stream().anyMatch(each -> corrected(site, each));
        String written = w("act.receipt.written", "day", DateWords.day(site.today()), "replaces", corrected);
        return new Receipt(site, together).text(party == null ? "" : party.title(), written);
    }

    private static List<Event> sales(Piece piece) {
        return piece.events().stream()
                .filter(event -> event.kind() == Act.SELL.event())
                .toList();
    }

    /** Whether a receipt made of an earlier version of the record would state another sale. */
    private static boolean corrected(Site site, Sold each) {
        int at = sales(each.piece()).indexOf(each.sale());
        return site.ledger().history(Kinds.PIECE.key(each.piece().number().value())).stream()
                .filter(revision -> !revision.withdrawn())
                .map(revision -> sales(Kinds.PIECE.codec().fromText(revision.json())))
                .anyMatch(then -> then.size() > at && !stated(then.get(at)).equals(stated(each.sale())));
    }

    private static List<String> stated(Event sale) {
        return List.of(
                sale.when().entered(),
                String.valueOf(sale.party()),
                String.valueOf(sale.price()),
                sale.tax().toString());
    }

    /** Tax as recorded, and no total where a tax that was added has no amount. */
    private String text(String buyer, String written) {
        List<String> lines = new ArrayList<>();
        String day = sold.stream()
                .filter(each -> each.sale() != null)
                .findFirst()
                .map(each -> w(each.sale().when()))
                .orElse("");
        lines.add(w("act.receipt.head", "place", site.archive().studio().place(), "day", day)
                .strip());
        lines.add(buyer.isEmpty() ? w("act.receipt.body-nobody") : w("act.receipt.body", "name", buyer));
        for (Sold each : sold) {
            Piece piece = each.piece();
            lines.add(
                    each.price() == null
                            ? w("act.receipt.line-unpriced", "number", piece.shown(), "title", piece.title())
                            : w(
                                    "act.receipt.line",
                                    "number",
                                    piece.shown(),
                                    "title",
                                    piece.title(),
                                    "price",
                                    each.price()));
            if (each.tax().recorded()) {
                lines.add("    " + w(each.tax().words()));
            }
        }
        lines.add(total());
        lines.add(site.archive().studio().name());
        lines.add(written);
        return lines.stream().filter(line -> !line.isBlank()).collect(Collectors.joining("\n"));
    }

    private String total() {
        List<SaleTax> added = sold.stream()
                .map(Sold::tax)
                .filter(tax -> tax.way() == TaxWay.ADDED)
                .toList();
        if (added.stream().anyMatch(tax -> tax.amount() == null)) {
            return w("act.receipt.total-open");
        }
        Map<Currency, BigDecimal> totals = new TreeMap<>(Comparator.comparing(Currency::getCurrencyCode));
        sold.forEach(each -> add(totals, each.price()));
        added.forEach(tax -> add(totals, tax.amount()));
        if (totals.isEmpty() || sold.size() == 1 && added.isEmpty()) {
            return "";
        }
        return w(
                "act.receipt.total",
                "total",
                totals.entrySet().stream()
                        .map(total -> w(new Money(total.getValue(), total.getKey())))
                        .collect(Collectors.joining(" + ")));
    }

    private static void add(Map<Currency, BigDecimal> totals, @Nullable Money amount) {
        if (amount != null) {
            totals.merge(amount.currency(), amount.amount(), BigDecimal::add);
        }
    }
}
