package tenterbook.search.find;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.util.FixedBitSet;
import org.jspecify.annotations.Nullable;
import tenterbook.search.facet.FacetColumn;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceNumbers;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Measured;
import tenterbook.search.query.Span;

/** Which pieces meet all that a question asks of facets, numbers and dates. Numbers of pieces are for {@link PieceSearch}. */
final class ConstraintFilter {
    private static final int LONGEST_MONTH = 31;

    private interface Test {
        boolean meets(Columns columns, int doc);
    }

    private final List<Test> tests = new ArrayList<>();

    ConstraintFilter(List<Constraint> constraints, FacetTerms.Term[] terms) {
        for (Constraint each : constraints) {
            Test test = test(each, terms);
            if (test != null) {
                tests.add(test);
            }
        }
    }

    /** Null for a number of a piece. */
    private static @Nullable Test test(Constraint asked, FacetTerms.Term[] terms) {
        if (asked instanceof Constraint.OfFacet facet) {
            return facet(facet, terms);
        }
        if (asked instanceof Constraint.OfNumber number) {
            return number(number, terms);
        }
        if (asked instanceof Constraint.OfDays days) {
            return days(days);
        }
        if (asked instanceof Constraint.OfMonth month) {
            return month(month);
        }
        if (asked instanceof Constraint.AnyOf several) {
            boolean not = several.not();
            List<Test> parts = several.any().stream()
                    .map(each -> test(not ? each.negated() : each, terms))
                    .toList();
            return (columns, doc) -> not
                    ? parts.stream().allMatch(each -> each.meets(columns, doc))
                    : parts.stream().anyMatch(each -> each.meets(columns, doc));
        }
        return null;
    }

    /** Takes away from {@code documents} what does not meet every constraint. */
    void apply(Columns columns, FixedBitSet documents) {
        if (tests.isEmpty()) {
            return;
        }
        int length = documents.length();
        for (int doc = documents.nextSetBit(0); doc < length; ) {
            if (!meets(columns, doc)) {
                documents.clear(doc);
            }
            doc = doc + 1 < length ? documents.nextSetBit(doc + 1) : Integer.MAX_VALUE;
        }
    }

    private boolean meets(Columns columns, int doc) {
        for (Test test : tests) {
            if (!test.meets(columns, doc)) {
                return false;
            }
        }
        return true;
    }

    private static Test facet(Constraint.OfFacet asked, FacetTerms.Term[] terms) {
        boolean[] accepted = new boolean[terms.length];
        for (int term = 0; term < terms.length; term++) {
            accepted[term] =
                    terms[term].facet().equals(asked.facet()) && asked.values().contains(terms[term].folded());
        }
        return (columns, doc) -> any(columns.facets, doc, accepted) != asked.not();
    }

    private static boolean any(FacetColumn column, int doc, boolean[] accepted) {
        int end = column.start()[doc + 1];
        for (int i = column.start()[doc]; i < end; i++) {
            if (accepted[column.values()[i]]) {
                return true;
            }
        }
        return false;
    }

    private static Test number(Constraint.OfNumber asked, FacetTerms.Term[] terms) {
        Set<String> codes = new HashSet<>();
        asked.currencies().forEach(code -> codes.add(FacetValues.folded(code)));
        Test currency = facet(new Constraint.OfFacet(Facet.CURRENCY, codes, false), terms);
        return (columns, doc) -> {
            if (!codes.isEmpty() && !currency.meets(columns, doc)) {
                return false;
            }
            boolean all = true;
            for (Map.Entry<Measured, Span> each : asked.spans().entrySet()) {
                if (!known(columns, each.getKey(), doc)) {
                    return false;
                }
                all &= lies(columns, each.getKey(), each.getValue(), doc);
            }
            return all != asked.not();
        };
    }

    private static boolean known(Columns columns, Measured what, int doc) {
        return switch (what) {
            case RATIO -> !Double.isNaN(shorter(columns, 0, doc));
            case SIDE, LENGTH -> !Double.isNaN(longer(columns, 0, doc));
            default -> !Double.isNaN(columns.ranges[2 * column(what)][doc]);
        };
    }

    private static boolean lies(Columns columns, Measured what, Span span, int doc) {
        double[][] ranges = columns.ranges;
        return switch (what) {
            case LENGTH -> longer(span, columns, doc);
            case WIDTH ->
                shorter(span, columns, doc)
                        || span.overlaps(ranges[2 * PieceNumbers.WIDTH][doc], ranges[2 * PieceNumbers.WIDTH + 1][doc]);
            // 'Under' a length means the longer side too.
            case SIDE -> longer(span, columns, doc) || span.from() != null && shorter(span, columns, doc);
            case RATIO ->
                span.overlaps(
                        longer(columns, 0, doc) / shorter(columns, 1, doc),
                        longer(columns, 1, doc) / shorter(columns, 0, doc));
            default -> span.overlaps(ranges[2 * column(what)][doc], ranges[2 * column(what) + 1][doc]);
        };
    }

    private static boolean longer(Span span, Columns columns, int doc) {
        return span.overlaps(longer(columns, 0, doc), longer(columns, 1, doc));
    }

    private static boolean shorter(Span span, Columns columns, int doc) {
        return span.overlaps(shorter(columns, 0, doc), shorter(columns, 1, doc));
    }

    /** @param end 0 for the lower, 1 for the upper; NaN where no side is known */
    private static double longer(Columns columns, int end, int doc) {
        double length = columns.ranges[2 * PieceNumbers.LENGTH + end][doc];
        double width = columns.ranges[2 * PieceNumbers.WIDTH + end][doc];
        return Double.isNaN(length) ? width : Double.isNaN(width) ? length : Math.max(length, width);
    }

    /** NaN where one side is not known. */
    private static double shorter(Columns columns, int end, int doc) {
        return Math.min(
                columns.ranges[2 * PieceNumbers.LENGTH + end][doc], columns.ranges[2 * PieceNumbers.WIDTH + end][doc]);
    }

    /** How far a piece's numbers are from the ranges asked for, at both ends together. */
    static double distance(Constraint.OfNumber asked, Columns columns, int doc) {
        double sum = 0;
        for (Map.Entry<Measured, Span> each : asked.spans().entrySet()) {
            sum += switch (each.getKey()) {
                case RATIO -> 0;
                case SIDE, LENGTH, WIDTH ->
                    Math.min(
                            distance(PieceNumbers.LENGTH, each.getValue(), columns, doc),
                            distance(PieceNumbers.WIDTH, each.getValue(), columns, doc));
                default -> distance(column(each.getKey()), each.getValue(), columns, doc);
            };
        }
        return sum;
    }

    private static double distance(int column, Span span, Columns columns, int doc) {
        double low = columns.ranges[2 * column][doc];
        double high = columns.ranges[2 * column + 1][doc];
        double off = Math.abs(low - span.from()) + Math.abs(high - span.to());
        return Double.isNaN(off) ? Double.POSITIVE_INFINITY : off;
    }

    private static int column(Measured what) {
        return switch (what) {
            case DIPS -> PieceNumbers.DIPS;
            case WIDTH -> PieceNumbers.WIDTH;
            case PRICE -> PieceNumbers.PRICE;
            case MASS -> PieceNumbers.MASS;
            // What else there is has no column of its own.
            default -> PieceNumbers.LENGTH;
        };
    }

    private static Test days(Constraint.OfDays asked) {
        return (columns, doc) -> {
            double low = columns.ranges[2 * PieceNumbers.DAYS][doc];
            double high = columns.ranges[2 * PieceNumbers.DAYS + 1][doc];
            return !Double.isNaN(low) && overlaps(asked.days(), low, high) != asked.not();
        };
    }

    private static Test month(Constraint.OfMonth asked) {
        return (columns, doc) -> {
            double low = columns.ranges[2 * PieceNumbers.DAYS][doc];
            double high = columns.ranges[2 * PieceNumbers.DAYS + 1][doc];
            if (!(high - low < LONGEST_MONTH)) {
                return false;
            }
            boolean in = asked.months().contains(month(low)) && asked.months().contains(month(high));
            return in != asked.not();
        };
    }

    private static int month(double day) {
        return LocalDate.ofEpochDay((long) day).getMonthValue();
    }

    /** Whether something on a day from {@code low} to {@code high} (days since 1970-01-01) can have been on one of these. */
    static boolean overlaps(Days days, double low, double high) {
        LocalDate from = days.from();
        LocalDate to = days.to();
        return (from == null || high >= from.toEpochDay()) && (to == null || low <= to.toEpochDay());
    }
}
