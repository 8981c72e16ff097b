package tenterbook.web.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.Words;

/**
 * Pieces to choose from by their pictures, and those chosen so far.
 *
 * @param find what is searched for; empty for the usual order of the list
 * @param cards at most {@link #SHOWN}; none where it is not open
 * @param total how many the search found
 * @param chosen numbers of those chosen so far
 * @param kept further fields that choosing hands on: the kind of paper, and chosen pieces that the search does not show
 * @param open whether choosing is what the page is for: nothing is chosen, or a search goes on
 * @param problem why the search could not be understood; empty where it was
 */
public record PiecePicker(
        String find,
        List<PieceCard> cards,
        long total,
        List<String> chosen,
        List<Map.Entry<String, String>> kept,
        boolean open,
        String problem) {
    private static final int SHOWN = 24;

    /**
     * @param parameters of the page
     * @param pieces numbers of those the page is about, which a search may have chosen
     */
    public static PiecePicker of(Site site, Map<String, List<String>> parameters, List<String> pieces) {
        List<String> chosen = ChosenPieces.anyNamed(parameters) ? pieces : List.of();
        String find = parameters.getOrDefault("find", List.of("")).get(0).strip();
        if (!pieces.isEmpty() && !parameters.containsKey("find")) {
            return new PiecePicker("", List.of(), 0, chosen, kept(parameters, chosen, List.of()), false, "");
        }
        String problem = "";
        PieceQuery query = PieceQuery.EVERYTHING;
        try {
            query = find.isEmpty() ? query : site.index().query(Map.of("q", List.of(find)));
        } catch (IllegalArgumentException e) {
            problem = Words.sentence(e);
        }
        SearchResult result = site.index().search(query.withSize(SHOWN));
        List<PieceCard> cards = result.hits().stream().map(Hit::card).toList();
        return new PiecePicker(find, cards, result.total(), chosen, kept(parameters, chosen, cards), true, problem);
    }

    private static List<Map.Entry<String, String>> kept(
            Map<String, List<String>> parameters, List<String> chosen, List<PieceCard> cards) {
        List<Map.Entry<String, String>> kept = new ArrayList<>();
        for (String name : List.of("kind", "market", "sheet", "fair", "agreement")) {
            parameters.getOrDefault(name, List.of()).stream()
                    .limit(1)
                    .forEach(value -> kept.add(Map.entry(name, value)));
        }
        chosen.stream()
                .filter(number -> cards.stream().noneMatch(card -> card.number().equals(number)))
                .forEach(number -> kept.add(Map.entry("pieces", number)));
        return kept;
    }
}
