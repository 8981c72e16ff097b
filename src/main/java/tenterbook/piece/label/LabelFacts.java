package tenterbook.piece.label;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the rules of labels ask of a piece.
 *
 * @param components parts besides its cloth; empty where none is recorded, which does not say that there is none
 * @param soldIn country where it is sold; empty where the studio's usual one holds or none is recorded
 * @param madeToOrder whether it was made to one person's order; null where not recorded
 * @param answers to questions of the rules
 */
public record LabelFacts(
        List<PieceComponent> components,
        String soldIn,
        @Nullable Boolean madeToOrder,
        List<RuleAnswer> answers) {
    public static final LabelFacts NONE = new LabelFacts(List.of(), "", null, List.of());

    public LabelFacts {
        components = components == null ? List.of() : List.copyOf(components);
        soldIn = soldIn == null ? "" : soldIn.strip();
        answers = answers == null ? List.of() : List.copyOf(answers);
    }

    /** The same for one sale: in the country chosen for it, else that of the piece, else the usual one. */
    public LabelFacts forSale(String chosen, String usual) {
        String country = !chosen.isEmpty() ? chosen : !soldIn.isEmpty() ? soldIn : usual;
        return new LabelFacts(components, country, madeToOrder, answers);
    }

    /** With an answer in place of an earlier one to the same question. */
    public LabelFacts answered(RuleAnswer answer) {
        return new LabelFacts(components, soldIn, madeToOrder, with(answers, answer));
    }

    public LabelFacts without(RuleAnswer answer) {
        return new LabelFacts(
                components,
                soldIn,
                madeToOrder,
                answers.stream().filter(each -> !each.equals(answer)).toList());
    }

    static List<RuleAnswer> with(List<RuleAnswer> answers, RuleAnswer answer) {
        List<RuleAnswer> others = new ArrayList<>(answers);
        others.removeIf(answer::sameQuestion);
        others.add(answer);
        return others;
    }
}
