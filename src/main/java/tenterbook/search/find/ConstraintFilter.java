package tenterbook.search.find;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.facet.FacetColumn;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceNumbers;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Days;
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
            if (each instanceof Constraint.OfFacet facet) {
                tests.add(facet(facet, terms));
            } else if (each instanceof Constraint.OfNumber number) {
                tests.add(number(number));
            } else if (each instanceof Constraint.OfDays days) {
                tests.add(days(days));
            } else if (each instanceof Constraint.OfMonth month) {
                tests.add(month(month));
            }
        }
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

    private static Test number(Constraint.OfNumber asked) {
        return (columns, doc) -> {
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
        return what == Measured.SIDE
                ? known(columns, Measured.LENGTH, doc) || known(columns, Measured.WIDTH, doc)
                : !Double.isNaN(columns.ranges[2 * column(what)][doc]);
    }

    private static boolean lies(Columns columns, Measured what, Span span, int doc) {
        if (what == Measured.SIDE) {
            // 'Under' a length means the longer side too.
            return span.from() == null
                    ? lies(columns, Measured.LENGTH, span, doc)
                    : lies(columns, Measured.LENGTH, span, doc) || lies(columns, Measured.WIDTH, span, doc);
        }
        return span.overlaps(columns.ranges[2 * column(what)][doc], columns.ranges[2 * column(what) + 1][doc]);
    }

    /** How far a piece's numbers are from the ranges asked for, at both ends together. */
    static double distance(Constraint.OfNumber asked, Columns columns, int doc) {
        double sum = 0;
        for (Map.Entry<Measured, Span> each : asked.spans().entrySet()) {
            double one = distance(each.getKey(), each.getValue(), columns, doc);
            sum += each.getKey() != Measured.SIDE
                    ? one
                    : Math.min(one, distance(Measured.WIDTH, each.getValue(), columns, doc));
        }
        return sum;
    }

    private static double distance(Measured what, Span span, Columns columns, int doc) {
        double low = columns.ranges[2 * column(what)][doc];
        double high = columns.ranges[2 * column(what) + 1][doc];
        double off = Math.abs(low - span.from()) + Math.abs(high - span.to());
        return Double.isNaN(off) ? Double.POSITIVE_INFINITY : off;
    }

    private static int column(Measured what) {
        return switch (what) {
            case DIPS -> PieceNumbers.DIPS;
            case LENGTH, SIDE -> PieceNumbers.LENGTH;
            case WIDTH -> PieceNumbers.WIDTH;
            case PRICE -> PieceNumbers.PRICE;
            case MASS -> PieceNumbers.MASS;
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
