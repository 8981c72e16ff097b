package tenterbook.web.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.search.Hit;
import tenterbook.search.PieceQuery;
import tenterbook.web.NotHere;
import tenterbook.web.Site;

/** The pieces that a request names, by number or by a search. */
final class ChosenPieces {
    private ChosenPieces() {}

    /**
     * The numbers under {@code pieces}, or of all that the search among the parameters finds; at most one more than {@code
     * most}, so that the caller can tell.
     *
     * @param others names of parameters that belong to the page and not to the search
     */
    static List<String> numbers(Site site, Map<String, List<String>> parameters, Collection<String> others, int most) {
        List<String> numbers = new ArrayList<>();
        for (String list : parameters.getOrDefault("pieces", List.of())) {
            numbers.addAll(Arrays.stream(list.split("[,;\\s]+"))
                    .filter(number -> !number.isBlank())
                    .toList());
        }
        if (numbers.isEmpty()) {
            Map<String, List<String>> search = new HashMap<>(parameters);
            search.keySet().removeAll(others);
            search.remove("pieces");
            PieceQuery query = PieceQuery.of(search);
            if (!query.narrows() && !parameters.containsKey("page")) {
                return List.of();
            }
            int size = PieceQuery.MOST_SIZE;
            for (int page = 1; numbers.size() <= most; page++) {
                List<Hit> hits =
                        site.index().search(query.withSize(size).withPage(page)).hits();
                hits.forEach(hit -> numbers.add(hit.card().number()));
                if (hits.size() < size) {
                    break;
                }
            }
        }
        return numbers.stream().distinct().limit(most + 1L).toList();
    }

    /** @throws NotHere naming the first number that is none of the archive's */
    static List<Saved<Piece>> saved(Site site, List<String> numbers) {
        List<Saved<Piece>> pieces = new ArrayList<>();
        for (String number : numbers) {
            pieces.add(site.archive()
                    .ledger()
                    .find(Kinds.PIECE, number)
                    .orElseThrow(() -> new NotHere("piece “" + number + "”")));
        }
        return pieces;
    }
}
