package tenterbook.search.question;

import java.util.LinkedHashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.words.Message;

/**
 * A part of a question that was read as a fact.
 *
 * @param constraint what it asks
 * @param label what it was taken for, as in 'Status: sold'
 * @param typed as it stands in the question
 * @param without the question without it
 * @param asWords the question with it as plain words
 */
public record Understood(Constraint constraint, Message label, String typed, String without, String asWords) {
    /** Of these a piece has one value, or is seldom meant to have two: several mean any of them. */
    private static final Set<Facet> ONE_OF = Set.of(Facet.STATUS, Facet.CATEGORY, Facet.BOARD, Facet.HOLDER);

    /**
     * This or another fact of the same facet, where they are alternatives.
     *
     * @param or whether 'or' stands between them
     * @return null where both must hold
     */
    @Nullable
    Understood or(Understood other, boolean or) {
        if (!(constraint instanceof Constraint.OfFacet one)
                || !(other.constraint instanceof Constraint.OfFacet two)
                || !one.facet().equals(two.facet())
                || one.not()
                || two.not()
                || !or && !ONE_OF.contains(one.facet())) {
            return null;
        }
        Set<String> values = new LinkedHashSet<>(one.values());
        values.addAll(two.values());
        return new Understood(
                new Constraint.OfFacet(one.facet(), values, false),
                Message.of("question.or", "one", label, "other", other.label),
                typed + " … " + other.typed,
                other.without,
                other.asWords);
    }
}
