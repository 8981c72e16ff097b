package tenterbook.web.found;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.page.Address;

/**
 * A page of results as a table. The number heads each row.
 *
 * @param headings of the number, then of the columns
 */
public record FoundTable(List<Heading> headings, List<Row> rows) {
    /**
     * @param address that orders by the column, the other way round where it is ordered by it now; empty where there is no such order
     * @param sorted as {@code aria-sort} has it; null where results are not ordered by the column
     */
    public record Heading(
            Column column,
            String label,
            String address,
            @Nullable String sorted) {}

    /** @param cells in the order of the headings */
    public record Row(String number, List<Cell> cells) {}

    static FoundTable of(Site site, PieceQuery query, ViewChoice choice, List<String> numbers) {
        List<Column> columns = new ArrayList<>(choice.shownColumns());
        columns.remove(Column.NUMBER);
        List<Heading> headings = new ArrayList<>();
        headings.add(heading(Column.NUMBER, query, choice));
        columns.forEach(column -> headings.add(heading(column, query, choice)));
        return new FoundTable(
                headings,
                new Subjects(site)
                        .of(numbers, columns).stream()
                                .map(subject -> new Row(
                                        subject.number(),
                                        columns.stream()
                                                .map(column -> column.of(subject))
                                                .toList()))
                                .toList());
    }

    private static Heading heading(Column column, PieceQuery query, ViewChoice choice) {
        Order up = column.ascending();
        Order down = column.descending();
        boolean rising = up != null && query.order() == up;
        boolean falling = down != null && query.order() == down;
        Order next = rising && down != null ? down : up;
        String address = next == null || rising && down == null
                ? ""
                : choice.onto("/?" + Address.query(query.withSort(next).toParameters()));
        return new Heading(column, column.label(), address, rising ? "ascending" : falling ? "descending" : null);
    }

    /** All columns in order, for choosing. */
    static List<Column> choices() {
        return Arrays.stream(Column.values())
                .filter(column -> column != Column.NUMBER)
                .toList();
    }
}
