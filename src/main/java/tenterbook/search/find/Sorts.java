package tenterbook.search.find;

import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Order;

/** The orders of results, as Lucene sorts. */
final class Sorts {
    private static final SortField BY_NUMBER = new SortField(PieceDocument.SORT_NUMBER, SortField.Type.STRING);

    private Sorts() {}

    static Sort of(Order order) {
        return switch (order) {
            case RELEVANCE, COLOUR -> new Sort(SortField.FIELD_SCORE, BY_NUMBER);
            case NEWEST -> new Sort(day(PieceDocument.SORT_DAY, true), BY_NUMBER);
            case OLDEST -> new Sort(day(PieceDocument.SORT_DAY, false), BY_NUMBER);
            case EXAMINED -> new Sort(day(PieceDocument.SORT_EXAMINED, false), BY_NUMBER);
            case NUMBER -> new Sort(BY_NUMBER);
            case TITLE -> new Sort(title(), BY_NUMBER);
            case DIPS -> new Sort(number(PieceDocument.SORT_DIPS, false), BY_NUMBER);
            case MOST_DIPS -> new Sort(number(PieceDocument.SORT_DIPS, true), BY_NUMBER);
            case SMALLEST -> new Sort(number(PieceDocument.SORT_SIZE, false), BY_NUMBER);
            case DEAREST -> new Sort(number(PieceDocument.SORT_PRICE, true), BY_NUMBER);
            case SIZE -> new Sort(number(PieceDocument.SORT_SIZE, true), BY_NUMBER);
            case PRICE -> new Sort(number(PieceDocument.SORT_PRICE, false), BY_NUMBER);
        };
    }

    private static SortField day(String name, boolean newest) {
        SortField field = new SortField(name, SortField.Type.LONG, newest);
        field.setMissingValue(newest ? Long.MIN_VALUE : Long.MAX_VALUE);
        return field;
    }

    private static SortField title() {
        SortField field = new SortField(PieceDocument.SORT_TITLE, SortField.Type.STRING);
        field.setMissingValue(SortField.STRING_LAST);
        return field;
    }

    private static SortField number(String name, boolean greatest) {
        SortField field = new SortField(name, SortField.Type.DOUBLE, greatest);
        field.setMissingValue(greatest ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
        return field;
    }
}
