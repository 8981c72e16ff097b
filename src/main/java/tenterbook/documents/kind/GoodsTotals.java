package tenterbook.documents.kind;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import tenterbook.documents.Block;
import tenterbook.measure.Basis;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.words.Message;

/** Sums of a list of goods. What is not known is in no sum and is counted. */
final class GoodsTotals {
    private GoodsTotals() {}

    /** Whether its weight is known as a number or as a range with both ends. */
    static boolean weighed(DocumentFacts each) {
        return each.piece().mass().in(Unit.GRAM).bounded();
    }

    /** Of all that are weighed, as in '240 g' or '240 g and 1 piece of unknown weight'. */
    static String weight(List<DocumentFacts> pieces) {
        double low = 0;
        double high = 0;
        boolean about = false;
        int unknown = 0;
        for (DocumentFacts each : pieces) {
            if (weighed(each)) {
                Quantity grams = each.piece().mass().in(Unit.GRAM);
                low += grams.low();
                high += grams.high();
                about |= grams.about();
            } else {
                unknown++;
            }
        }
        boolean some = unknown < pieces.size();
        String sum = some ? QuantityWords.value(new Quantity("", low, high, Unit.GRAM, Basis.COMPUTED, about)) : "";
        return Message.of("document.goods.weight", "some", some, "sum", sum, "unknown", unknown)
                .onPaper();
    }

    /** By currency; then how many have none. */
    static List<Block.Fact> values(List<DocumentFacts> pieces, Function<DocumentFacts, Optional<Money>> value) {
        Map<String, BigDecimal> sums = new TreeMap<>();
        int unknown = 0;
        for (DocumentFacts each : pieces) {
            Optional<Money> amount = value.apply(each);
            if (amount.isEmpty()) {
                unknown++;
            } else {
                sums.merge(
                        amount.get().currency().getCurrencyCode(), amount.get().amount(), BigDecimal::add);
            }
        }
        List<Block.Fact> facts = new ArrayList<>();
        sums.forEach((code, sum) -> facts.add(DocumentWords.fact(
                Message.of("document.total", "currency", code), new Money(sum, Currency.getInstance(code)))));
        if (unknown > 0) {
            facts.add(DocumentWords.fact("document.fact.in-no-total", DocumentWords.pieces(unknown)));
        }
        return facts;
    }
}
