package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.found.ViewChoice.View;
import tenterbook.web.page.Address;

/**
 * How a page of results is shown, and the forms beside it.
 *
 * @param links to each view
 * @param search parameters of the search without its page, for the hidden fields of forms
 * @param kept parameters of the view, likewise
 * @param columns that the table and the file can have
 * @param axes that the plot can have
 * @param table null in the other views, as is the plot
 */
public record FoundViews(
        ViewChoice choice,
        List<Link> links,
        List<Map.Entry<String, String>> search,
        List<Map.Entry<String, String>> kept,
        List<Box> columns,
        List<Axes> axes,
        @Nullable FoundTable table,
        @Nullable FoundPlot plot) {
    public record Link(String label, String address, boolean chosen) {}

    /** A column to choose. */
    public record Box(String word, String label, boolean chosen, boolean isPrivate) {}

    /** A quantity to choose for an axis. */
    public record Axes(String word, String label, boolean x, boolean y) {}

    /** @param numbers of the pieces on this page of results */
    public static FoundViews of(Site site, PieceQuery query, ViewChoice choice, List<String> numbers) {
        Map<String, List<String>> search = new LinkedHashMap<>(query.toParameters());
        search.remove("page");
        String address = search.isEmpty() ? "/" : "/?" + Address.query(search);
        return new FoundViews(
                choice,
                Stream.of(View.values())
                        .map(view -> new Link(
                                w("found.view." + view.word()),
                                choice.with(view).onto(address),
                                view == choice.view()))
                        .toList(),
                flat(search),
                flat(choice.toParameters()),
                FoundTable.choices().stream()
                        .map(column -> new Box(
                                column.word(),
                                column.label(),
                                choice.shownColumns().contains(column),
                                column.isPrivate()))
                        .toList(),
                Stream.of(PlotQuantity.values())
                        .map(each -> new Axes(each.word(), each.label(), each == choice.x(), each == choice.y()))
                        .toList(),
                choice.view() == View.TABLE && !numbers.isEmpty() ? FoundTable.of(site, query, choice, numbers) : null,
                choice.view() == View.PLOT && !numbers.isEmpty() ? FoundPlot.of(site, query, choice) : null);
    }

    private static List<Map.Entry<String, String>> flat(Map<String, List<String>> parameters) {
        return parameters.entrySet().stream()
                .flatMap(each -> each.getValue().stream().map(value -> Map.entry(each.getKey(), value)))
                .toList();
    }

    /** The whole question, view included, as a saved search keeps it. */
    public String question() {
        return Address.query(Stream.concat(search.stream(), kept.stream()).toList());
    }

    /** Those of the view that a form does not send by itself. */
    public List<Map.Entry<String, String>> keptWithout(String... sent) {
        return kept.stream()
                .filter(each -> Stream.of(sent).noneMatch(each.getKey()::equals))
                .toList();
    }

    /** Columns chosen that leave the archive only by a stated choice. */
    public List<String> privateColumns() {
        return columns.stream()
                .filter(each -> each.chosen() && each.isPrivate())
                .map(Box::label)
                .toList();
    }
}
