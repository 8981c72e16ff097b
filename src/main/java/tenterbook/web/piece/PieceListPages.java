package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.measure.NumberWords;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;
import tenterbook.web.found.FoundViews;
import tenterbook.web.found.ViewChoice;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.page.Visitor;
import tenterbook.web.page.Words;
import tenterbook.web.record.DraftPlace;

/** The list of pieces, and searching it. */
public final class PieceListPages {
    private final Site site;

    public PieceListPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        FirstPage first = new FirstPage(site);
        first.routes(routes);
        routes.get("/", ctx -> {
            if (ctx.queryParamMap().isEmpty() && first.due()) {
                first.show(ctx, Form.empty());
            } else {
                list(ctx);
            }
        });
        routes.get("/suggestions", this::suggestions);
    }

    /**
     * A page of results.
     *
     * @param problem why the search could not be understood; everything is then shown
     * @param typed the search as typed, by parameter, for the form
     * @param facets each value with the address that turns it on or off
     * @param colour the colour asked for, or null
     * @param facts what of the words typed was read as facts
     * @param offers other ways in which they may have been meant
     * @param chosen what narrows the search, each with the address without it
     * @param drafts names of forms with unsaved typing
     * @param found how they are shown
     */
    public record PieceListView(
            SearchResult result,
            String problem,
            Map<String, String> typed,
            List<SearchLinks.Group> facets,
            ColourBand.Swatch colour,
            List<SearchLinks.Link> chosen,
            List<SearchLinks.Fact> facts,
            List<SearchLinks.Link> offers,
            List<ListedPiece> listed,
            int page,
            int pages,
            String earlier,
            String later,
            String printAll,
            String documentsAll,
            int inArchive,
            List<SearchLinks.Link> orders,
            ColourResults byColour,
            List<ColourMeaning> meanings,
            List<SearchLinks.Link> withoutOne,
            List<Draft> drafts,
            FoundViews found) {}

    /** A form with unsaved typing. */
    public record Draft(String label, String address) {}

    /** A piece found, with why it was found. */
    public record ListedPiece(PieceCard card, ColourBand band, String distance, List<String> why) {
        public String alt() {
            return card.caption();
        }
    }

    private void list(Context ctx) {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        PieceQuery query;
        ViewChoice choice = ViewChoice.USUAL;
        String problem = "";
        try {
            query = site.index().query(parameters);
            choice = ViewChoice.read(parameters);
        } catch (IllegalArgumentException e) {
            query = PieceQuery.EVERYTHING;
            problem = Words.sentence(e);
            ctx.status(400);
        }
        PieceListView view = view(query, choice, problem, parameters);
        if ("results".equals(ctx.header("HX-Target"))) {
            Html.show(ctx, "part/results", Map.of("view", view));
        } else {
            Html.show(
                    ctx,
                    "pieces",
                    Map.of(
                            "page",
                            site.page(ctx, w("pieces.title"), "pieces"),
                            "view",
                            view,
                            "saved",
                            SavedList.some(site)));
        }
    }

    PieceListView view(PieceQuery query, ViewChoice choice, String problem, Map<String, List<String>> parameters) {
        SearchResult result = site.index().search(query);
        PieceQuery asked = result.query();
        int pages = (int) Math.max(1, (result.total() + asked.size() - 1) / asked.size());
        Map<String, String> typed = parameters.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> String.join(" ", entry.getValue())));
        KeptView kept = new KeptView(choice);
        return new PieceListView(
                result,
                problem,
                typed,
                kept.groups(new SearchLinks(site).groups(asked, result.facets())),
                asked.colour() == null ? null : ColourBand.swatch(asked.colour(), "", 1, 0),
                kept.links(SearchLinks.chosen(asked)),
                kept.facts(SearchLinks.facts(asked, result.understood())),
                kept.links(SearchLinks.offers(asked, result.offers())),
                listed(asked, result.hits()),
                asked.page(),
                pages,
                asked.page() > 1
                        ? choice.onto(SearchLinks.address("/", asked.withPage(Math.min(pages, asked.page() - 1))))
                        : "",
                asked.page() < pages ? choice.onto(SearchLinks.address("/", asked.withPage(asked.page() + 1))) : "",
                SearchLinks.address("/print", asked.withPage(1)),
                SearchLinks.address("/documents", asked.withPage(1)),
                site.ledger().count(Kinds.PIECE),
                kept.links(SearchLinks.orders(asked)),
                ColourResults.of(site, asked, parameters),
                ColourMeaning.of(site, asked, result.understood()),
                result.total() > 0
                        ? List.of()
                        : kept.links(new SearchLinks(site).withoutOne(asked, result.understood())),
                drafts(),
                FoundViews.of(
                        site,
                        asked,
                        choice,
                        result.hits().stream().map(hit -> hit.card().number()).toList()));
    }

    private List<ListedPiece> listed(PieceQuery query, List<Hit> hits) {
        List<ListedPiece> listed = new ArrayList<>();
        List<String> tags = query.chosen(TagFacet.TAG);
        Map<String, List<Standing>> standings = tags.isEmpty()
                ? Map.of()
                : site.tags().of(hits.stream().map(hit -> hit.card().number()).toList());
        for (Hit hit : hits) {
            ListedPiece each = listed(hit);
            List<String> why = new ArrayList<>(each.why());
            List<Standing> its = standings.getOrDefault(hit.card().number(), List.of());
            tags.forEach(tag -> why.addAll(TagReasons.of(its, tag)));
            listed.add(new ListedPiece(each.card(), each.band(), each.distance(), why));
        }
        return listed;
    }

    private static ListedPiece listed(Hit hit) {
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
        return new ListedPiece(hit.card(), ColourBand.of(hit.card()), distance, hit.why());
    }

    /** A withdrawn record has no form; its draft is kept until the record is brought back. */
    private boolean reachable(DraftPlace place) {
        return place.needs() == null
                || Kinds.ALL.stream()
                        .filter(kind -> kind.name().equals(place.needs().kind()))
                        .anyMatch(kind ->
                                site.ledger().find(kind, place.needs().id()).isPresent());
    }

    private List<Draft> drafts() {
        return site.ledger().drafts().all().stream()
                .flatMap(draft -> Visitor.now().named(draft.name()).stream())
                .map(DraftPlace::of)
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
                                .map(suggestion -> new SearchLinks.Link(
                                        suggestion.text(),
                                        switch (suggestion.kind()) {
                                            case "number" -> "/pieces/" + Address.encoded(suggestion.value());
                                            case "title", "place" -> "/?q=" + Address.encoded(suggestion.value());
                                            default ->
                                                "/?" + suggestion.kind() + "=" + Address.encoded(suggestion.value());
                                        },
                                        suggestion.kind(),
                                        false))
                                .toList()));
    }
}
