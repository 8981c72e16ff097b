package tenterbook.web.piece;

import static tenterbook.web.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.labelling.HangTagStatus.Standing;
import tenterbook.labelling.LabelIssuer;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.NumberWords;
import tenterbook.search.facet.FacetCount;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Html;
import tenterbook.web.Site;
import tenterbook.web.TagFacet;
import tenterbook.web.Words;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.record.DraftPlace;

/** The pieces hung along drying lines, and finding among them. */
public final class PieceListPages {
    private static final Set<Facet> OPEN_AT_FIRST = Set.of(Facet.BOARD, Facet.DYE, Facet.STATUS);

    private final Site site;

    public PieceListPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/", this::list);
        routes.get("/suggestions", this::suggestions);
    }

    /**
     * A page of results.
     *
     * @param problem why the search could not be understood; everything is then shown
     * @param typed the search as typed, by parameter, for the form
     * @param facets each value with the address that turns it on or off
     * @param colour the colour asked for, or null
     * @param chosen what narrows the search, each with the address without it
     * @param drafts names of forms with unsaved typing
     */
    public record PieceListView(
            SearchResult result,
            String problem,
            Map<String, String> typed,
            List<Group> facets,
            ColourBand.Swatch colour,
            List<Link> chosen,
            List<Hung> hung,
            int page,
            int pages,
            String earlier,
            String later,
            String printAll,
            String documentsAll,
            int inArchive,
            List<Link> orders,
            List<Draft> drafts) {}

    /** A facet's values as links. */
    public record Group(String label, List<Link> values, boolean open) {}

    /** A link with a count or a mark. */
    public record Link(String label, String address, String count, boolean chosen) {}

    /** A form with unsaved typing. */
    public record Draft(String label, String address) {}

    /** A piece on the line, with why it was found. */
    public record Hung(tenterbook.search.index.PieceCard card, ColourBand band, String distance, List<String> why) {
        public String alt() {
            return card.caption().isEmpty() ? "" : card.caption();
        }
    }

    private void list(Context ctx) {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        PieceQuery query;
        String problem = "";
        try {
            query = site.index().query(parameters);
        } catch (IllegalArgumentException e) {
            query = PieceQuery.EVERYTHING;
            problem = Words.sentence(e);
            ctx.status(400);
        }
        PieceListView view = view(query, problem, parameters);
        if ("results".equals(ctx.header("HX-Target"))) {
            Html.show(ctx, "part/results", Map.of("view", view));
        } else {
            Html.show(ctx, "pieces", Map.of("page", site.page(ctx, w("pieces.title"), "pieces"), "view", view));
        }
    }

    private PieceListView view(PieceQuery query, String problem, Map<String, List<String>> parameters) {
        SearchResult result = site.index().search(query);
        PieceQuery asked = result.query();
        int pages = (int) Math.max(1, (result.total() + asked.size() - 1) / asked.size());
        Map<String, String> typed = parameters.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> String.join(" ", entry.getValue())));
        return new PieceListView(
                result,
                problem,
                typed,
                groups(asked, result.facets(), home()),
                asked.colour() == null ? null : ColourBand.swatch(asked.colour(), "", 1, 0),
                chosen(asked),
                hung(asked, result.hits()),
                asked.page(),
                pages,
                asked.page() > 1 ? address("/", asked.withPage(asked.page() - 1)) : "",
                asked.page() < pages ? address("/", asked.withPage(asked.page() + 1)) : "",
                address("/print", asked.withPage(1)),
                address("/documents", asked.withPage(1)),
                site.archive().ledger().count(Kinds.PIECE),
                orders(asked),
                drafts());
    }

    static String address(String path, PieceQuery query) {
        String parameters = query.toParameters().entrySet().stream()
                .flatMap(entry -> entry.getValue().stream()
                        .map(value -> entry.getKey() + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)))
                .collect(Collectors.joining("&"));
        return parameters.isEmpty() ? path : path + "?" + parameters;
    }

    private List<Group> groups(PieceQuery query, List<FacetGroup> facets, String home) {
        List<Group> groups = new ArrayList<>();
        for (FacetGroup facet : facets) {
            Facet of = facet(facet.name());
            List<Link> values = new ArrayList<>();
            for (FacetCount count : facet.counts()) {
                if (onlyState(facet, count) || elsewhere(facet, count, home)) {
                    continue;
                }
                PieceQuery next = count.chosen()
                        ? query.without(of, count.value()).withPage(1)
                        : query.with(of, count.value()).withPage(1);
                values.add(
                        new Link(count.label(), address("/", next), Integer.toString(count.count()), count.chosen()));
            }
            boolean open = values.stream().anyMatch(Link::chosen) || OPEN_AT_FIRST.contains(of);
            groups.add(new Group(w(of.label()), values, open));
        }
        return groups;
    }

    /** Where the studio most likely sells, as in the address; empty where its record cannot be read. */
    private String home() {
        return site.archive()
                .readableStudio()
                .map(studio -> LabelIssuer.word(Market.of(studio.currency())))
                .orElse("");
    }

    /** Whether a value tells of tags in a market where the studio has printed none; the address finds them all the same. */
    private static boolean elsewhere(FacetGroup facet, FacetCount count, String home) {
        if (!facet.name().equals(TagFacet.TAG.parameter()) || count.chosen()) {
            return false;
        }
        String market = count.value().substring(0, count.value().indexOf(':') + 1);
        Set<String> printed = Set.of(market + "current", market + "out-of-date");
        return !home.isEmpty()
                && !market.equals(home + ":")
                && facet.counts().stream().noneMatch(other -> printed.contains(other.value()));
    }

    /** Whether a value is a board's one state, which says no more than the board itself does. */
    private static boolean onlyState(FacetGroup facet, FacetCount count) {
        int slash = count.value().indexOf('/');
        if (!facet.name().equals(Facet.BOARD.parameter()) || slash < 0 || count.chosen()) {
            return false;
        }
        String board = count.value().substring(0, slash + 1);
        return facet.counts().stream()
                        .filter(other -> other.value().startsWith(board))
                        .count()
                == 1;
    }

    private Facet facet(String name) {
        for (Facet facet : site.index().facets()) {
            if (facet.parameter().equals(name)) {
                return facet;
            }
        }
        throw new IllegalStateException("The index counts a facet of no known name: " + name);
    }

    private static String shown(Facet facet, String value) {
        int colon = value.indexOf(':');
        return facet.equals(TagFacet.TAG) && colon > 0
                ? value.substring(0, colon).toUpperCase(Locale.ROOT) + ", "
                        + value.substring(colon + 1).replace('-', ' ')
                : value;
    }

    private static List<Link> chosen(PieceQuery query) {
        List<Link> links = new ArrayList<>();
        if (!query.text().isEmpty()) {
            links.add(new Link(
                    w("pieces.chosen.text", "text", query.text()),
                    address("/", query.withText("").withPage(1)),
                    "",
                    true));
        }
        query.chosen()
                .forEach((facet, values) -> values.forEach(value -> links.add(new Link(
                        w(facet.label()) + ": " + shown(facet, value),
                        address("/", query.without(facet, value).withPage(1)),
                        "",
                        true))));
        if (query.dips() != null) {
            links.add(new Link(
                    w("pieces.chosen.dips", "range", query.dips()),
                    address("/", query.withDips(null).withPage(1)),
                    "",
                    true));
        }
        if (query.lengthCm() != null) {
            links.add(new Link(
                    w("pieces.chosen.length", "range", query.lengthCm()),
                    address("/", query.withLengthCm(null).withPage(1)),
                    "",
                    true));
        }
        if (query.widthCm() != null) {
            links.add(new Link(
                    w("pieces.chosen.width", "range", query.widthCm()),
                    address("/", query.withWidthCm(null).withPage(1)),
                    "",
                    true));
        }
        if (query.price() != null) {
            links.add(new Link(
                    w("pieces.chosen.price", "range", query.price()),
                    address("/", query.withPrice(null).withPage(1)),
                    "",
                    true));
        }
        if (query.finished() != null) {
            links.add(new Link(
                    w("pieces.chosen.finished", "range", query.finished()),
                    address("/", query.withFinished(null).withPage(1)),
                    "",
                    true));
        }
        if (query.colours().any()) {
            links.add(new Link(
                    asked(query.colours()),
                    address("/", query.withColours(ColourChoice.NONE).withPage(1)),
                    "",
                    true));
        }
        return links;
    }

    /** The question of colours in words, as in 'near deep blue, ground near green' or 'like V24-003'. */
    private static String asked(ColourChoice colours) {
        if (!colours.like().isEmpty()) {
            return w("pieces.chosen.like", "piece", colours.like());
        }
        String near = Stream.concat(
                        colours.anywhere().stream()
                                .map(colour -> w("pieces.chosen.near", "colour", ColourWords.of(colour))),
                        colours.regions().entrySet().stream()
                                .map(part -> w(
                                        "pieces.chosen.part-near",
                                        "part",
                                        part.getKey(),
                                        "colour",
                                        ColourWords.of(part.getValue()))))
                .collect(Collectors.joining(", "));
        return colours.picture() ? near + ", " + w("pieces.chosen.picture") : near;
    }

    private static List<Link> orders(PieceQuery query) {
        List<Link> links = new ArrayList<>();
        for (Order order : Order.values()) {
            if (order == Order.COLOUR && !query.colours().any()
                    || order == Order.RELEVANCE && query.text().isEmpty()) {
                continue;
            }
            links.add(new Link(
                    order.word(), address("/", query.withSort(order).withPage(1)), "", query.order() == order));
        }
        return links;
    }

    private List<Hung> hung(PieceQuery query, List<Hit> hits) {
        List<Hung> hung = new ArrayList<>();
        List<String> tags = query.chosen(TagFacet.TAG);
        Map<String, List<Standing>> standings = tags.isEmpty()
                ? Map.of()
                : site.tags().of(hits.stream().map(hit -> hit.card().number()).toList());
        for (Hit hit : hits) {
            Hung each = hung(hit);
            List<String> why = new ArrayList<>(each.why());
            List<Standing> stands = standings.getOrDefault(hit.card().number(), List.of());
            tags.forEach(tag -> why.addAll(TagReasons.of(stands, tag)));
            hung.add(new Hung(each.card(), each.band(), each.distance(), why));
        }
        return hung;
    }

    private static Hung hung(Hit hit) {
        String distance = "";
        if (hit.distance() != null) {
            distance = w(
                    "pieces.distance",
                    "words",
                    DifferenceWords.of(hit.distance()),
                    "distance",
                    NumberWords.decimals(hit.distance(), 1),
                    "shared",
                    hit.share() != null,
                    "share",
                    NumberWords.percent(hit.share() == null ? 0 : hit.share(), 0));
        }
        return new Hung(hit.card(), ColourBand.of(hit.card()), distance, hit.why());
    }

    /** The form of a withdrawn record is not there; its draft waits until the record is brought back. */
    private boolean reachable(DraftPlace place) {
        return place.needs() == null
                || Kinds.ALL.stream()
                        .filter(kind -> kind.name().equals(place.needs().kind()))
                        .anyMatch(kind -> site.archive()
                                .ledger()
                                .find(kind, place.needs().id())
                                .isPresent());
    }

    private List<Draft> drafts() {
        return site.archive().ledger().drafts().all().stream()
                .map(draft -> DraftPlace.of(draft.name()))
                .filter(this::reachable)
                .limit(5)
                .map(place -> new Draft(place.label(), place.form()))
                .toList();
    }

    private void suggestions(Context ctx) {
        String typed = ctx.queryParam("q");
        Html.show(
                ctx,
                "part/suggestions",
                Map.of(
                        "suggestions",
                        site.index().suggest(typed == null ? "" : typed, 8).stream()
                                .map(suggestion -> new Link(
                                        suggestion.text(),
                                        switch (suggestion.kind()) {
                                            case "number" -> "/pieces/" + encode(suggestion.value());
                                            case "title", "place" -> "/?q=" + encode(suggestion.value());
                                            default -> "/?" + suggestion.kind() + "=" + encode(suggestion.value());
                                        },
                                        suggestion.kind(),
                                        false))
                                .toList()));
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
