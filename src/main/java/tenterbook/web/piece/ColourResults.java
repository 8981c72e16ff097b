package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.QueryParameters;
import tenterbook.web.Site;
import tenterbook.web.colour.LookingForCloth;
import tenterbook.web.page.Address;

/**
 * What a page of results has where colours are asked for.
 *
 * @param asked parameters of the colours asked for; empty where none are, or a whole palette
 * @param several whether more than one colour is asked for
 * @param looking how far the program has come with looking for the cloth on photographs, while such a search is incomplete; empty
 *     otherwise
 * @param idle a sentence on what was given of a colour while none is asked for; empty for nothing
 */
public record ColourResults(String asked, boolean several, String looking, String idle) {
    private static final Set<Order> BY_COLOUR = Set.of(Order.DARKEST, Order.LIGHTEST, Order.CONTRAST, Order.COLOUR);

    static ColourResults of(Site site, PieceQuery query, Map<String, List<String>> parameters) {
        List<String> idle = QueryParameters.idle(parameters, query);
        ColourChoice colours = query.colours();
        boolean concerned = colours.any()
                || BY_COLOUR.contains(query.order())
                || !query.chosen(Facet.COLOUR).isEmpty();
        return new ColourResults(
                colours.asks().isEmpty()
                        ? ""
                        : Address.query(
                                PieceQuery.EVERYTHING.withColours(colours).toParameters()),
                colours.asks().size() > 1,
                concerned ? LookingForCloth.sentence(site.archive().cloths()) : "",
                idle.isEmpty() ? "" : w("search.idle", "names", String.join(", ", idle), "count", idle.size()));
    }

    /** Whether the part of each picture that has the colour is outlined. */
    public boolean outlined() {
        return !asked.isEmpty();
    }

    /** Where the outline on a piece's picture is to be had; empty for none. */
    public String where(PieceCard card) {
        return asked.isEmpty() || card.photo() == null
                ? ""
                : "/photos/" + card.photo().hex() + "/where?" + asked;
    }
}
