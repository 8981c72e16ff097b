package tenterbook.piece.label;

import java.util.List;
import tenterbook.piece.cost.Pricing;

/**
 * What the rules of labels ask of the studio, beside its name and addresses. Every text is empty where not recorded.
 *
 * @param registeredName the name under which the business is registered, which may be that under which it trades
 * @param importer who imports into Great Britain what is made outside it: name, postal and electronic address
 * @param soldIn country where pieces are usually sold
 * @param answers to questions of the rules that concern every piece
 * @param pricing how a price is made of a cost; for the maker alone
 */
public record SellingFacts(
        String registeredName, String importer, String soldIn, List<RuleAnswer> answers, Pricing pricing) {
    public static final SellingFacts NONE = new SellingFacts("", "", "", List.of(), Pricing.NONE);

    public SellingFacts {
        registeredName = registeredName == null ? "" : registeredName.strip();
        importer = importer == null ? "" : importer.strip();
        soldIn = soldIn == null ? "" : soldIn.strip();
        answers = answers == null ? List.of() : List.copyOf(answers);
        pricing = pricing == null ? Pricing.NONE : pricing;
    }

    /** With an answer in place of an earlier one to the same question. */
    public SellingFacts answered(RuleAnswer answer) {
        return new SellingFacts(registeredName, importer, soldIn, LabelFacts.with(answers, answer), pricing);
    }

    public SellingFacts without(RuleAnswer answer) {
        return new SellingFacts(
                registeredName,
                importer,
                soldIn,
                answers.stream().filter(each -> !each.equals(answer)).toList(),
                pricing);
    }
}
