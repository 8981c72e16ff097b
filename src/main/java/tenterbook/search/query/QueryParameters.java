package tenterbook.search.query;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import tenterbook.colour.space.ColourText;
import tenterbook.colour.space.Lab;
import tenterbook.piece.ColourRole;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A query as the parameters of an address, and back. */
public final class QueryParameters {
    /** Where a colour may lie. */
    private static final String PHOTOGRAPH = "photograph";

    private static final String CLOTH = "cloth";
    private static final List<String> OWN = List.of(
            "q",
            "dips",
            "length",
            "width",
            "price",
            "finished",
            "colour",
            "ground",
            "local",
            "resist",
            "like",
            "within",
            "share",
            "in",
            "sort",
            "page",
            "size");
    private static final Message COLOUR = Message.of("search.expected.colour");
    private final Map<String, List<String>> parameters;

    private QueryParameters(Map<String, List<String>> parameters) {
        this.parameters = parameters;
    }

    public static PieceQuery read(Map<String, List<String>> parameters, List<Facet> facets) {
        return new QueryParameters(parameters).query(facets);
    }

    /** The names of all parameters, those of facets included. */
    public static Set<String> names(List<Facet> facets) {
        Set<String> names = new TreeSet<>(OWN);
        facets.forEach(facet -> names.add(facet.parameter()));
        return names;
    }

    /** Names of parameters that were given and ask nothing, since they say something of a colour and none is asked for. */
    public static List<String> idle(Map<String, List<String>> parameters, PieceQuery query) {
        ColourChoice asked = query.colours();
        return Stream.of("within", "share", "in")
                .filter(name ->
                        name.equals("within") ? !asked.any() : asked.anywhere().isEmpty())
                .filter(name -> parameters.getOrDefault(name, List.of()).stream()
                        .anyMatch(value -> !value.isBlank() && !value.equals(CLOTH)))
                .toList();
    }

    private PieceQuery query(List<Facet> facets) {
        Map<Facet, List<String>> chosen = new TreeMap<>();
        for (Facet facet : facets) {
            List<String> values = parameters.getOrDefault(facet.parameter(), List.of());
            check(values.size() <= 50, facet.parameter(), "values", values.size());
            chosen.put(facet, new ArrayList<>(values));
        }
        return new PieceQuery(
                one("q", text -> text, expected("words"), ""),
                chosen,
                range("dips"),
                range("length"),
                range("width"),
                range("price"),
                one("finished", Days::read, expected("days"), null),
                colours(),
                one("sort", QueryParameters::order, oneOf(orders()), null),
                one("page", QueryParameters::whole, expected("page"), 1),
                one("size", QueryParameters::whole, expected("size"), PieceQuery.USUAL_SIZE));
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
                one("like", text -> text, expected("piece"), ""),
                one("within", QueryParameters::number, expected("within"), null),
                one("share", QueryParameters::number, expected("share"), 0.0),
                one("in", QueryParameters::inPicture, expected("in"), false));
    }

    private static boolean inPicture(String text) {
        if (!text.equals(PHOTOGRAPH) && !text.equals(CLOTH)) {
            throw new IllegalArgumentException(text);
        }
        return text.equals(PHOTOGRAPH);
    }

    private Span range(String name) {
        return one(name, Span::read, expected("range"), null);
    }

    private <T> T one(String name, Function<String, T> reading, Message expected, T absent) {
        List<String> values = parameters.getOrDefault(name, List.of()).stream()
                .filter(value -> !value.isBlank())
                .distinct()
                .toList();
        if (values.isEmpty()) {
            return absent;
        }
        if (values.size() != 1) {
            throw refusal(
                    name, Message.of("search.expected.once", "expected", expected), String.join("” and “", values));
        }
        return read(name, reading, expected, values.get(0));
    }

    private static <T> T read(String name, Function<String, T> reading, Message expected, String value) {
        try {
            return reading.apply(value.strip());
        } catch (IllegalArgumentException e) {
            throw new Refusal(notRun(name, expected, value), e);
        }
    }

    /** A decimal comma is read as a full stop. */
    private static double number(String text) {
        if (!text.matches("\\d{1,9}([.,]\\d{1,9})?")) {
            throw Refusal.of("search.not-a-number", "found", text);
        }
        return Double.parseDouble(text.replace(',', '.'));
    }

    private static int whole(String text) {
        if (!text.matches("\\d{1,9}")) {
            throw Refusal.of("search.not-a-number", "found", text);
        }
        return Integer.parseInt(text);
    }

    private static Order order(String text) {
        return Stream.of(Order.values())
                .filter(order -> order.word().equals(text))
                .findFirst()
                .orElseThrow(IllegalArgumentException::new);
    }

    private static List<String> orders() {
        return Stream.of(Order.values()).map(Order::word).toList();
    }

    private static Lab colour(String text) {
        return ColourText.read(text);
    }

    private static String text(Lab colour) {
        return Span.plain(colour.lightness()) + "," + Span.plain(colour.a()) + "," + Span.plain(colour.b());
    }

    public static Map<String, List<String>> write(PieceQuery query) {
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
        put(written, "in", colours.picture() ? PHOTOGRAPH : null);
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

    /** @param expected key below {@code search.expected} of the message */
    public static void check(boolean fine, String name, String expected, Object found) {
        if (!fine) {
            throw refusal(name, expected(expected), found);
        }
    }

    public static Refusal refusal(String name, Message expected, Object found) {
        return new Refusal(notRun(name, expected, found));
    }

    private static Message notRun(String name, Message expected, Object found) {
        return Message.of("search.not-run", "name", name, "expected", expected, "found", found);
    }

    private static Message expected(String what) {
        return Message.of("search.expected." + what);
    }

    public static Message oneOf(Collection<String> choices) {
        return Message.of("search.expected.one-of", "choices", String.join(", ", choices));
    }
}
