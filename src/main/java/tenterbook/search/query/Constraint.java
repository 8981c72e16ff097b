package tenterbook.search.query;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** One thing that a question says of a piece. All of a question's constraints hold together. */
public sealed interface Constraint {
    /** Whether the piece must not be so. */
    boolean not();

    /** The same, the other way round. */
    Constraint negated();

    /**
     * Stands under one of some values of a facet.
     *
     * @param values each as {@link FacetValues#folded}; none where the archive has no such value, so that nothing is found
     */
    record OfFacet(Facet facet, Set<String> values, boolean not) implements Constraint {
        public OfFacet {
            values = Set.copyOf(values);
        }

        @Override
        public OfFacet negated() {
            return new OfFacet(facet, values, !not);
        }
    }

    /**
     * Has numbers that can lie in these ranges, all of them; where one is not recorded, neither this nor its contrary holds.
     *
     * @param currencies of a price, as three letters; one in another currency meets neither this nor its contrary; empty for any
     */
    record OfNumber(Map<Measured, Span> spans, Set<String> currencies, boolean not) implements Constraint {
        public OfNumber {
            spans = Map.copyOf(spans);
            currencies = Set.copyOf(currencies);
        }

        /** In whatever currency. */
        public OfNumber(Map<Measured, Span> spans, boolean not) {
            this(spans, Set.of(), not);
        }

        /** Whether every range has two ends, so that some numbers are nearer to its middle than others. */
        public boolean bounded() {
            return spans.values().stream().allMatch(span -> span.from() != null && span.to() != null);
        }

        @Override
        public OfNumber negated() {
            return new OfNumber(spans, currencies, !not);
        }
    }

    /** Can have been finished on one of these days; an unknown date fits neither this nor its contrary. */
    record OfDays(Days days, boolean not) implements Constraint {
        @Override
        public OfDays negated() {
            return new OfDays(days, !not);
        }
    }

    /** Was finished in one of these months of whatever year, 1 to 12; a date known less well fits neither this nor its contrary. */
    record OfMonth(Set<Integer> months, boolean not) implements Constraint {
        public OfMonth {
            months = Set.copyOf(months);
        }

        @Override
        public OfMonth negated() {
            return new OfMonth(months, !not);
        }
    }

    /** Has this number, or one of these; see {@link PlainNumber}. */
    record OfPieceNumber(String plain, boolean not) implements Constraint {
        @Override
        public OfPieceNumber negated() {
            return new OfPieceNumber(plain, !not);
        }
    }

    /** Meets one of these, none of which is a number of a piece; at least two. */
    record AnyOf(List<Constraint> any, boolean not) implements Constraint {
        public AnyOf {
            any = List.copyOf(any);
        }

        @Override
        public AnyOf negated() {
            return new AnyOf(any, !not);
        }
    }
}
