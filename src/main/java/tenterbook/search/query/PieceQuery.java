package tenterbook.search.query;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.colour.space.Lab;
import tenterbook.measure.Threshold;

/**
 * A whole search, as in the address bar.
 *
 * @param text words as typed; may be empty
 * @param chosen values of each facet; several of one facet mean any of them, facets together mean all
 * @param dips range that the piece's dips can lie in
 * @param lengthCm range of the longer side, cm
 * @param widthCm range of the other side, cm
 * @param price range of the price asked, whatever its currency
 * @param finished days on which it can have been finished
 * @param colours what is asked of the pieces' colours
 * @param sort as chosen, or null for the order that fits; see {@link #order}
 * @param page from 1
 * @param size pieces on a page, 1 to 200
 */
public record PieceQuery(
        String text,
        Map<Facet, List<String>> chosen,
        Span dips,
        Span lengthCm,
        Span widthCm,
        Span price,
        Days finished,
        ColourChoice colours,
        Order sort,
        int page,
        int size) {
    public static final double USUAL_WITHIN = Threshold.number("search-within");
    public static final double MOST_WITHIN = 40;
    public static final int USUAL_SIZE = 24;
    public static final int MOST_SIZE = 200;
    public static final int LONGEST_TEXT = 400;

    /** Every piece, newest first. */
    public static final PieceQuery EVERYTHING =
            new PieceQuery("", Map.of(), null, null, null, null, null, ColourChoice.NONE, null, 1, USUAL_SIZE);

    /** @throws IllegalArgumentException naming the parameter, what was expected and what was found */
    public PieceQuery {
        text = text == null ? "" : text.strip();
        QueryParameters.check(text.length() <= LONGEST_TEXT, "q", "text", text.length());
        chosen = tidy(chosen);
        QueryParameters.check(page >= 1, "page", "page", page);
        QueryParameters.check(size >= 1 && size <= MOST_SIZE, "size", "size", size);
        colours = colours == null ? ColourChoice.NONE : colours;
        sort = !colours.any() && sort == Order.COLOUR || sort == usual(text, colours) ? null : sort;
    }

    private static Map<Facet, List<String>> tidy(Map<Facet, List<String>> chosen) {
        Map<Facet, List<String>> tidy = new TreeMap<>();
        chosen.forEach((facet, values) -> {
            List<String> kept = values.stream()
                    .map(String::strip)
                    .filter(value -> !value.isEmpty())
                    .map(value -> FacetValues.canonical(facet, value))
                    .distinct()
                    .toList();
            if (!kept.isEmpty()) {
                tidy.put(facet, kept);
            }
        });
        return Collections.unmodifiableMap(tidy);
    }

    private static Order usual(String text, ColourChoice colours) {
        if (colours.any()) {
            return Order.COLOUR;
        }
        return text.isEmpty() ? Order.NEWEST : Order.RELEVANCE;
    }

    /** The order used: as chosen, else nearest colours, best match of words, or newest, whichever first applies. */
    public Order order() {
        return sort == null ? usual(text, colours) : sort;
    }

    public List<String> chosen(Facet facet) {
        return chosen.getOrDefault(facet, List.of());
    }

    /** Whether it asks for anything but the order and the page. */
    public boolean narrows() {
        return !equals(EVERYTHING.withSort(sort).withPage(page).withSize(size));
    }

    /** As {@code PieceIndex.query}, of the index's own facets alone. */
    public static PieceQuery of(Map<String, List<String>> parameters) {
        return QueryParameters.read(parameters, Facet.OWN);
    }

    /** The parameters that {@code PieceIndex.query} reads back to an equal query, only those that are not as usual, always in one order. */
    public Map<String, List<String>> toParameters() {
        return QueryParameters.write(this);
    }

    /** With other words, from the first page. */
    public PieceQuery withText(String other) {
        return new PieceQuery(other, chosen, dips, lengthCm, widthCm, price, finished, colours, sort, 1, size);
    }

    /** With one more value of a facet, from the first page. */
    public PieceQuery with(Facet facet, String value) {
        List<String> values = new ArrayList<>(chosen(facet));
        values.add(value);
        return choosing(facet, values);
    }

    /** Without one value of a facet, from the first page. */
    public PieceQuery without(Facet facet, String value) {
        String gone = FacetValues.canonical(facet, value.strip());
        return choosing(
                facet,
                chosen(facet).stream().filter(other -> !other.equals(gone)).toList());
    }

    private PieceQuery choosing(Facet facet, List<String> values) {
        Map<Facet, List<String>> other = new TreeMap<>(chosen);
        other.put(facet, values);
        return new PieceQuery(text, other, dips, lengthCm, widthCm, price, finished, colours, sort, 1, size);
    }

    public PieceQuery withDips(Span other) {
        return new PieceQuery(text, chosen, other, lengthCm, widthCm, price, finished, colours, sort, 1, size);
    }

    public PieceQuery withLengthCm(Span other) {
        return new PieceQuery(text, chosen, dips, other, widthCm, price, finished, colours, sort, 1, size);
    }

    public PieceQuery withWidthCm(Span other) {
        return new PieceQuery(text, chosen, dips, lengthCm, other, price, finished, colours, sort, 1, size);
    }

    public PieceQuery withPrice(Span other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, other, finished, colours, sort, 1, size);
    }

    public PieceQuery withFinished(Days other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, price, other, colours, sort, 1, size);
    }

    /** With other wishes for colours, from the first page. */
    public PieceQuery withColours(ColourChoice other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, price, finished, other, sort, 1, size);
    }

    /** The first colour asked for anywhere in the piece; null for none. */
    public Lab colour() {
        return colours.anywhere().isEmpty() ? null : colours.anywhere().get(0);
    }

    /** Greatest ΔE00 from the colours asked for: as chosen, else {@link #USUAL_WITHIN}. */
    public double within() {
        return colours.within() == null ? USUAL_WITHIN : colours.within();
    }

    /** Least share of the piece within that difference, 0 to 1. */
    public double share() {
        return colours.share();
    }

    public PieceQuery withSort(Order other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, price, finished, colours, other, 1, size);
    }

    public PieceQuery withPage(int other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, price, finished, colours, sort, other, size);
    }

    public PieceQuery withSize(int other) {
        return new PieceQuery(text, chosen, dips, lengthCm, widthCm, price, finished, colours, sort, 1, other);
    }
}
