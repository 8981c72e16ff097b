package tenterbook.search.find;

import java.util.EnumMap;
import java.util.Map;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.SortField.Type;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Order;

/** By which field each order goes; pieces that lack it come last in either direction, ties go by number. */
final class Sorts {
    private static final Map<Order, Key> KEYS = new EnumMap<>(Map.ofEntries(
            Map.entry(Order.NEWEST, new Key(PieceDocument.SORT_DAY, Type.LONG, true)),
            Map.entry(Order.OLDEST, new Key(PieceDocument.SORT_DAY, Type.LONG, false)),
            Map.entry(Order.EXAMINED, new Key(PieceDocument.SORT_EXAMINED, Type.LONG, false)),
            Map.entry(Order.NUMBER, new Key(PieceDocument.SORT_NUMBER, Type.STRING, false)),
            Map.entry(Order.TITLE, new Key(PieceDocument.SORT_TITLE, Type.STRING, false)),
            Map.entry(Order.DIPS, new Key(PieceDocument.SORT_DIPS, Type.DOUBLE, false)),
            Map.entry(Order.MOST_DIPS, new Key(PieceDocument.SORT_DIPS, Type.DOUBLE, true)),
            Map.entry(Order.SIZE, new Key(PieceDocument.SORT_SIZE, Type.DOUBLE, true)),
            Map.entry(Order.SMALLEST, new Key(PieceDocument.SORT_SIZE, Type.DOUBLE, false)),
            Map.entry(Order.PRICE, new Key(PieceDocument.SORT_PRICE, Type.DOUBLE, false)),
            Map.entry(Order.DEAREST, new Key(PieceDocument.SORT_PRICE, Type.DOUBLE, true)),
            Map.entry(Order.DARKEST, new Key(PieceDocument.SORT_LIGHTNESS, Type.DOUBLE, false)),
            Map.entry(Order.LIGHTEST, new Key(PieceDocument.SORT_LIGHTNESS, Type.DOUBLE, true)),
            Map.entry(Order.CONTRAST, new Key(PieceDocument.SORT_CONTRAST, Type.DOUBLE, true))));

    private Sorts() {}

    /** A field of the index, how its values compare, and whether the greatest comes first. */
    private record Key(String field, Type type, boolean greatestFirst) {
        private SortField sortField() {
            SortField sort = new SortField(field, type, greatestFirst);
            if (type == Type.STRING) {
                sort.setMissingValue(SortField.STRING_LAST);
            } else if (type == Type.LONG) {
                sort.setMissingValue(greatestFirst ? Long.MIN_VALUE : Long.MAX_VALUE);
            } else {
                sort.setMissingValue(greatestFirst ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
            }
            return sort;
        }
    }

    /** @throws NullPointerException for an order that depends on the search */
    static Sort of(Order order) {
        return new Sort(KEYS.get(order).sortField(), KEYS.get(Order.NUMBER).sortField());
    }

    static Sort byScore() {
        return new Sort(SortField.FIELD_SCORE, KEYS.get(Order.NUMBER).sortField());
    }
}
