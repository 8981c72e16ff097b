package tenterbook.web.found;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.search.query.QueryParameters;
import tenterbook.web.page.Address;
import tenterbook.words.Refusal;

/**
 * How results are shown, as parameters of the address beside those of the search.
 *
 * @param columns of the table, as chosen; empty for the usual ones
 * @param x the quantity along the plot
 * @param y the quantity up the plot
 */
public record ViewChoice(View view, List<Column> columns, PlotQuantity x, PlotQuantity y) {
    /** Names of the parameters. */
    public static final List<String> NAMES = List.of("view", "column", "x", "y");

    public enum View {
        LINES("lines"),
        LIST("list"),
        TABLE("table"),
        PLOT("plot");

        private final String word;

        View(String word) {
            this.word = word;
        }

        /** The value in the address. */
        public String word() {
            return word;
        }
    }

    /** Drying lines. */
    public static final ViewChoice USUAL =
            new ViewChoice(View.LINES, List.of(), PlotQuantity.DIPS, PlotQuantity.LIGHTNESS);

    public ViewChoice {
        columns = List.copyOf(columns);
    }

    /** @throws Refusal naming the parameter, the choices and what was found */
    public static ViewChoice read(Map<String, List<String>> parameters) {
        return new ViewChoice(
                one(parameters, "view", View.values(), View::word).orElse(USUAL.view),
                columns(parameters),
                one(parameters, "x", PlotQuantity.values(), PlotQuantity::word).orElse(USUAL.x),
                one(parameters, "y", PlotQuantity.values(), PlotQuantity::word).orElse(USUAL.y));
    }

    /** The columns under {@code column}, in the order of the table, each once; empty without any. */
    static List<Column> columns(Map<String, List<String>> parameters) {
        List<String> asked = given(parameters, "column");
        asked.forEach(word -> {
            if (Stream.of(Column.values()).noneMatch(column -> column.word().equals(word))) {
                throw refused("column", Stream.of(Column.values()).map(Column::word), word);
            }
        });
        return Stream.of(Column.values())
                .filter(column -> asked.contains(column.word()))
                .toList();
    }

    private static List<String> given(Map<String, List<String>> parameters, String name) {
        return parameters.getOrDefault(name, List.of()).stream()
                .map(String::strip)
                .filter(value -> !value.isEmpty())
                .toList();
    }

    private interface Word<T> {
        String of(T choice);
    }

    private static <T> Optional<T> one(Map<String, List<String>> parameters, String name, T[] choices, Word<T> word) {
        Optional<String> asked = given(parameters, name).stream().findFirst();
        if (asked.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(choices)
                .filter(choice -> word.of(choice).equals(asked.get()))
                .findFirst()
                .orElseThrow(() -> refused(name, Arrays.stream(choices).map(word::of), asked.get())));
    }

    private static Refusal refused(String name, Stream<String> choices, String found) {
        return QueryParameters.refusal(name, QueryParameters.oneOf(choices.toList()), found);
    }

    /** The columns of the table: those chosen, else the usual ones. */
    public List<Column> shownColumns() {
        return columns.isEmpty() ? Column.USUAL : columns;
    }

    public ViewChoice with(View other) {
        return new ViewChoice(other, columns, x, y);
    }

    /** The parameters that {@link #read} reads back, only those that are not as usual. */
    public Map<String, List<String>> toParameters() {
        Map<String, List<String>> written = new LinkedHashMap<>();
        put(written, "view", view.word(), USUAL.view.word());
        if (!columns.isEmpty() && !columns.equals(Column.USUAL)) {
            written.put("column", columns.stream().map(Column::word).toList());
        }
        put(written, "x", x.word(), USUAL.x.word());
        put(written, "y", y.word(), USUAL.y.word());
        return written;
    }

    private static void put(Map<String, List<String>> written, String name, String value, String usual) {
        if (!value.equals(usual)) {
            written.put(name, List.of(value));
        }
    }

    /** An address with these choices after its own parameters. */
    public String onto(String address) {
        String parameters = Address.query(toParameters());
        if (parameters.isEmpty()) {
            return address;
        }
        return address + (address.contains("?") ? "&" : "?") + parameters;
    }
}
