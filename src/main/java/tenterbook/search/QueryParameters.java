package tenterbook.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.colour.ColourText;
import tenterbook.colour.Lab;
import tenterbook.piece.ColourRole;

/** A query as the parameters of an address, and back. */
final class QueryParameters {
    private static final String COLOUR = "L,a,b such as 34,-2,-25, or #rrggbb";
    private final Map<String, List<String>> parameters;

    private QueryParameters(Map<String, List<String>> parameters) {
        this.parameters = parameters;
    }

    static PieceQuery read(Map<String, List<String>> parameters, List<Facet> facets) {
        return new QueryParameters(parameters).query(facets);
    }

    private PieceQuery query(List<Facet> facets) {
        Map<Facet, List<String>> chosen = new TreeMap<>();
        for (Facet facet : facets) {
            List<String> values = parameters.getOrDefault(facet.parameter(), List.of());
            check(values.size() <= 50, facet.parameter(), "at most 50 values", values.size());
            chosen.put(facet, new ArrayList<>(values));
        }
        return new PieceQuery(
                one("q", text -> text, "words", ""),
                chosen,
                range("dips"),
                range("length"),
                range("width"),
                range("price"),
                one("finished", Days::read, "days such as 2024-01..2024-06, 2024 or 2024-03-05..", null),
                colours(),
                one("sort", QueryParameters::order, "one of " + orders(), null),
                one("page", QueryParameters::whole, "a page from 1", 1),
                one("size", QueryParameters::whole, "1 to 200 pieces on a page", PieceQuery.USUAL_SIZE));
    }

    private ColourChoice colours() {
        List<Lab> anywhere = parameters.getOrDefault("colour", List.of()).stream()
                .filter(value -> !value.isBlank())
                .distinct()
                .map(value -> read("colour", QueryParameters::colour, COLOUR, value))
                .toList();
        Map<ColourRole, Lab> regions = new EnumMap<>(ColourRole.class);
        ColourChoice.ROLES.forEach((name, role) -> {
            Lab colour = one(name, QueryParameters::colour, COLOUR, null);
            if (colour != null) {
                regions.put(role, colour);
            }
        });
        return new ColourChoice(
                anywhere,
                regions,
                one("like", text -> text, "the number of a piece", ""),
                one("within", QueryParameters::number, "a ΔE00 above 0 and at most 40", null),
                one("share", QueryParameters::number, "a share from 0 to 1", 0.0));
    }

    private Span range(String name) {
        return one(name, Span::read, "a range such as 4..8, 4.., ..8 or 6", null);
    }

    private <T> T one(String name, Function<String, T> reading, String expected, T absent) {
        List<String> values = parameters.getOrDefault(name, List.of()).stream()
                .filter(value -> !value.isBlank())
                .distinct()
                .toList();
        if (values.isEmpty()) {
            return absent;
        }
        check(values.size() == 1, name, expected + ", once", String.join("” and “", values));
        return read(name, reading, expected, values.get(0));
    }

    private static <T> T read(String name, Function<String, T> reading, String expected, String value) {
        try {
            return reading.apply(value.strip());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(refusal(name, expected, value), e);
        }
    }

    /** A decimal comma is read as a full stop. */
    private static double number(String text) {
        if (!text.matches("\\d{1,9}([.,]\\d{1,9})?")) {
            throw new IllegalArgumentException("not a number");
        }
        return Double.parseDouble(text.replace(',', '.'));
    }

    private static int whole(String text) {
        if (!text.matches("\\d{1,9}")) {
            throw new IllegalArgumentException("not a whole number");
        }
        return Integer.parseInt(text);
    }

    private static Order order(String text) {
        return Stream.of(Order.values())
                .filter(order -> order.word().equals(text))
                .findFirst()
                .orElseThrow(IllegalArgumentException::new);
    }

    private static String orders() {
        return Stream.of(Order.values()).map(Order::word).collect(Collectors.joining(", "));
    }

    private static Lab colour(String text) {
        return ColourText.read(text);
    }

    private static String text(Lab colour) {
        return Span.plain(colour.lightness()) + "," + Span.plain(colour.a()) + "," + Span.plain(colour.b());
    }

    static Map<String, List<String>> write(PieceQuery query) {
        Map<String, List<String>> written = new LinkedHashMap<>();
        put(written, "q", query.text().isEmpty() ? null : query.text());
        query.chosen().forEach((facet, values) -> written.put(facet.parameter(), values));
        put(written, "dips", query.dips());
        put(written, "length", query.lengthCm());
        put(written, "width", query.widthCm());
        put(written, "price", query.price());
        put(written, "finished", query.finished());
        ColourChoice colours = query.colours();
        if (!colours.anywhere().isEmpty()) {
            written.put(
                    "colour",
                    colours.anywhere().stream().map(QueryParameters::text).toList());
        }
        for (String name : List.of("ground", "local", "resist")) {
            Lab colour = colours.regions().get(ColourChoice.ROLES.get(name));
            put(written, name, colour == null ? null : text(colour));
        }
        put(written, "like", colours.like().isEmpty() ? null : colours.like());
        put(written, "within", colours.within() == null ? null : Span.plain(colours.within()));
        put(written, "share", colours.share() == 0 ? null : Span.plain(colours.share()));
        put(written, "sort", query.sort() == null ? null : query.sort().word());
        put(written, "page", query.page() == 1 ? null : query.page());
        put(written, "size", query.size() == PieceQuery.USUAL_SIZE ? null : query.size());
        return written;
    }

    private static void put(Map<String, List<String>> written, String name, Object value) {
        if (value != null) {
            written.put(name, List.of(value.toString()));
        }
    }

    static void check(boolean fine, String name, String expected, Object found) {
        if (!fine) {
            throw new IllegalArgumentException(refusal(name, expected, found));
        }
    }

    private static String refusal(String name, String expected, Object found) {
        return "The search was not run: “%s” should be %s; found “%s”. Change or leave out that part."
                .formatted(name, expected, found);
    }
}
