package tenterbook.search;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.colour.Lab;

/**
 * A search, whole: everything that stands in the address bar.
 *
 * @param text words as typed; may be empty
 * @param chosen values of each facet; several of one facet mean any of them, facets together mean all
 * @param dips range that the piece's dips can lie in
 * @param lengthCm range of the longer side, cm
 * @param widthCm range of the other side, cm
 * @param price range of the price asked, whatever its currency
 * @param finished days on which it can have been finished
 * @param colour asked for, CIELAB, D65, 2°, rounded to two decimals; or null
 * @param within greatest ΔE00 from that colour, above 0 and at most 40
 * @param share least share of the piece within that difference, 0 to 1; pieces without measured shares match only 0
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
        Lab colour,
        double within,
        double share,
        Order sort,
        int page,
        int size) {
    public static final double USUAL_WITHIN = 10;
    public static final double MOST_WITHIN = 40;
    public static final int USUAL_SIZE = 24;
    public static final int MOST_SIZE = 200;
    static final int LONGEST_TEXT = 400;

    /** Every piece, newest first. */
    public static final PieceQuery EVERYTHING =
            new PieceQuery("", Map.of(), null, null, null, null, null, null, USUAL_WITHIN, 0, null, 1, USUAL_SIZE);

    /** @throws IllegalArgumentException naming the parameter, what was expected and what was found */
    public PieceQuery {
        text = text == null ? "" : text.strip();
        QueryParameters.check(text.length() <= LONGEST_TEXT, "q", "at most 400 characters", text.length());
        chosen = tidy(chosen);
        QueryParameters.check(
                within > 0 && within <= MOST_WITHIN, "within", "a ΔE00 above 0 and at most 40", Span.plain(within));
        QueryParameters.check(share >= 0 && share <= 1, "share", "a share from 0 to 1", Span.plain(share));
        QueryParameters.check(page >= 1, "page", "a page from 1", page);
        QueryParameters.check(size >= 1 && size <= MOST_SIZE, "size", "1 to 200 pieces on a page", size);
        if (colour == null) {
            within = USUAL_WITHIN;
            share = 0;
            sort = sort == Order.COLOUR ? null : sort;
        } else {
            colour = new Lab(rounded(colour.lightness()), rounded(colour.a()), rounded(colour.b()));
        }
        sort = sort == usual(text, colour) ? null : sort;
    }

    private static Map<Facet, List<String>> tidy(Map<Facet, List<String>> chosen) {
        Map<Facet, List<String>> tidy = new EnumMap<>(Facet.class);
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

    private static double rounded(double value) {
        return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).doubleValue() + 0.0;
    }

    private static Order usual(String text, Lab colour) {
        return colour != null ? Order.COLOUR : text.isEmpty() ? Order.NEWEST : Order.RELEVANCE;
    }

    /** The order used: as chosen, else nearest colour, best match of words, or newest, whichever first applies. */
    public Order order() {
        return sort == null ? usual(text, colour) : sort;
    }

    public List<String> chosen(Facet facet) {
        return chosen.getOrDefault(facet, List.of());
    }

    /** Whether it asks for anything but the order and the page. */
    public boolean narrows() {
        return !equals(EVERYTHING.withSort(sort).withPage(page).withSize(size));
    }

    /**
     * Reads the parameters of an address; unknown ones are passed over, blank ones count as absent.
     *
     * @throws IllegalArgumentException with a sentence that names the parameter, what was expected and what was found
     */
    public static PieceQuery of(Map<String, List<String>> parameters) {
        return QueryParameters.read(parameters);
    }

    /** The parameters that {@link #of} reads back to an equal query, only those that are not as usual, always in one order. */
    public Map<String, List<String>> toParameters() {
        return QueryParameters.write(this);
    }

    /** With other words, from the first page. */
    public PieceQuery withText(String other) {
        return new PieceQuery(
                other, chosen, dips, lengthCm, widthCm, price, finished, colour, within, share, sort, 1, size);
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
        return new PieceQuery(
                text, other, dips, lengthCm, widthCm, price, finished, colour, within, share, sort, 1, size);
    }

    public PieceQuery withDips(Span other) {
        return new PieceQuery(
                text, chosen, other, lengthCm, widthCm, price, finished, colour, within, share, sort, 1, size);
    }

    public PieceQuery withLengthCm(Span other) {
        return new PieceQuery(
                text, chosen, dips, other, widthCm, price, finished, colour, within, share, sort, 1, size);
    }

    public PieceQuery withWidthCm(Span other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, other, price, finished, colour, within, share, sort, 1, size);
    }

    public PieceQuery withPrice(Span other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, other, finished, colour, within, share, sort, 1, size);
    }

    public PieceQuery withFinished(Days other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, price, other, colour, within, share, sort, 1, size);
    }

    /**
     * With another colour, or none where null, from the first page.
     *
     * @param distance greatest ΔE00
     * @param leastShare of the piece within it, 0 to 1
     */
    public PieceQuery withColour(Lab other, double distance, double leastShare) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, price, finished, other, distance, leastShare, sort, 1, size);
    }

    public PieceQuery withSort(Order other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, price, finished, colour, within, share, other, 1, size);
    }

    public PieceQuery withPage(int other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, price, finished, colour, within, share, sort, other, size);
    }

    public PieceQuery withSize(int other) {
        return new PieceQuery(
                text, chosen, dips, lengthCm, widthCm, price, finished, colour, within, share, sort, 1, other);
    }
}
