package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.ColourWords;
import tenterbook.labelling.rule.Market;
import tenterbook.search.facet.FacetCount;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.question.Offer;
import tenterbook.search.question.Understood;
import tenterbook.web.Site;
import tenterbook.web.page.Address;

/** The links of a page of results: facet values to choose, choices to take back, orders. */
public final class SearchLinks {
    private static final Set<Facet> OPEN_AT_FIRST = Set.of(Facet.BOARD, Facet.DYE, Facet.STATUS);

    /** More ways out are no help. */
    private static final int MOST_WITHOUT = 8;

    private final Site site;

    SearchLinks(Site site) {
        this.site = site;
    }

    /** A facet's values as links. */
    public record Group(String label, List<Link> values, boolean open) {}

    /** @param count of pieces, or another remark; may be empty */
    public record Link(String label, String address, String count, boolean chosen) {
        /** A choice, which the link takes back. */
        static Link without(String label, PieceQuery query) {
            return new Link(label, SearchLinks.address("/", query), "", true);
        }
    }

    static String address(String path, PieceQuery query) {
        String parameters = Address.query(query.toParameters());
        return parameters.isEmpty() ? path : path + "?" + parameters;
    }

    List<Group> groups(PieceQuery query, List<FacetGroup> facets) {
        List<Group> groups = new ArrayList<>();
        String home = home();
        for (FacetGroup facet : facets) {
            Facet of = facet(facet.name());
            List<Link> values = new ArrayList<>();
            for (FacetCount count : facet.counts()) {
                if (onlyState(facet, count) || elsewhere(facet, count, home)) {
                    continue;
                }
                PieceQuery next = count.chosen() ? query.without(of, count.value()) : query.with(of, count.value());
                values.add(new Link(
                        FacetLabels.of(of, count),
                        address("/", next),
                        Integer.toString(count.count()),
                        count.chosen()));
            }
            boolean open = values.stream().anyMatch(Link::chosen) || OPEN_AT_FIRST.contains(of);
            groups.add(new Group(w(of.label()), values, open));
        }
        return groups;
    }

    /** Code of the market where the studio sells; empty where its record cannot be read. */
    private String home() {
        return site.archive()
                .readableStudio()
                .map(studio -> Market.of(studio).code())
                .orElse("");
    }

    /** Whether a value is about tags of a market for which the studio has printed none. A typed address still finds them. */
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

    /** Whether a value is the only state of its board, which finds the same pieces as the board. */
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

    static List<Link> chosen(PieceQuery query) {
        List<Link> links = new ArrayList<>();
        if (!query.text().isEmpty()) {
            links.add(Link.without(w("pieces.chosen.text", "text", query.text()), query.withText("")));
        }
        query.chosen()
                .forEach((facet, values) -> values.forEach(value -> links.add(Link.without(
                        w(facet.label()) + ": " + FacetLabels.of(facet, value, value), query.without(facet, value)))));
        range(links, "pieces.chosen.dips", query.dips(), query.withDips(null));
        range(links, "pieces.chosen.length", query.lengthCm(), query.withLengthCm(null));
        range(links, "pieces.chosen.width", query.widthCm(), query.withWidthCm(null));
        range(links, "pieces.chosen.price", query.price(), query.withPrice(null));
        range(links, "pieces.chosen.finished", query.finished(), query.withFinished(null));
        if (query.colours().any()) {
            links.add(Link.without(asked(query.colours()), query.withColours(ColourChoice.NONE)));
        }
        return links;
    }

    /**
     * A part of the question that was read as a fact.
     *
     * @param label as in 'Status: sold'
     * @param without the address of the search without it
     * @param asWords the address of the search with it as plain words; empty where it is words already
     */
    public record Fact(String label, String without, String asWords) {}

    static List<Fact> facts(PieceQuery query, List<Understood> understood) {
        return understood.stream()
                .map(each -> new Fact(
                        w(each.label()),
                        address("/", query.withText(each.without())),
                        each.asWords().isEmpty() ? "" : address("/", query.withText(each.asWords()))))
                .toList();
    }

    /** Where nothing is found: what would be found without one part of the question or one value chosen, with how many pieces. */
    List<Link> withoutOne(PieceQuery query, List<Understood> understood) {
        List<Link> all = new ArrayList<>();
        understood.forEach(each -> all.add(withoutOne(w(each.label()), query.withText(each.without()))));
        query.chosen()
                .forEach((facet, values) -> values.forEach(value -> all.add(withoutOne(
                        w(facet.label()) + ": " + FacetLabels.of(facet, value, value), query.without(facet, value)))));
        return all.size() < 2
                ? List.of()
                : all.stream()
                        .filter(link -> !link.count().isEmpty())
                        .limit(MOST_WITHOUT)
                        .toList();
    }

    private Link withoutOne(String label, PieceQuery query) {
        long count = site.index().count(query);
        return new Link(label, address("/", query), count == 0 ? "" : w("pieces.count", "count", count), false);
    }

    /** Other ways in which the question may have been meant. */
    static List<Link> offers(PieceQuery query, List<Offer> offers) {
        return offers.stream()
                .filter(each -> each.question().length() <= PieceQuery.LONGEST_TEXT)
                .map(each -> new Link(w(each.label()), address("/", query.withText(each.question())), "", false))
                .toList();
    }

    private static void range(List<Link> links, String key, @Nullable Object range, PieceQuery without) {
        if (range != null) {
            links.add(Link.without(w(key, "range", range), without));
        }
    }

    /** The colours asked for in words, as in 'near deep blue, ground near green' or 'like V24-003'. */
    private static String asked(ColourChoice colours) {
        if (!colours.like().isEmpty()) {
            return w("pieces.chosen.like", "piece", colours.like());
        }
        String near = Stream.concat(
                        colours.anywhere().stream()
                                .map(colour -> w("pieces.chosen.near", "colour", ColourWords.name(colour))),
                        colours.regions().entrySet().stream()
                                .map(part -> w(
                                        "pieces.chosen.part-near",
                                        "part",
                                        part.getKey(),
                                        "colour",
                                        ColourWords.name(part.getValue()))))
                .collect(Collectors.joining(", "));
        return colours.picture() ? near + ", " + w("pieces.chosen.picture") : near;
    }

    static List<Link> orders(PieceQuery query) {
        List<Link> links = new ArrayList<>();
        for (Order order : Order.values()) {
            if (order == Order.COLOUR && !query.colours().any()
                    || order == Order.RELEVANCE && query.text().isEmpty()) {
                continue;
            }
            links.add(new Link(
                    w("pieces.order." + order.word()),
                    address("/", query.withSort(order)),
                    "",
                    query.order() == order));
        }
        return links;
    }
}
