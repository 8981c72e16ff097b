package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.search.find.Hit;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;

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
        List<String> numbers = named(parameters);
        if (numbers.isEmpty()) {
            Map<String, List<String>> search = new HashMap<>(parameters);
            search.keySet().removeAll(others);
            search.remove("pieces");
            PieceQuery query = site.index().query(search);
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

    /** The numbers typed under {@code pieces}, in order; never null, may be changed. */
    static List<String> named(Map<String, List<String>> parameters) {
        return parameters.getOrDefault("pieces", List.of()).stream()
                .flatMap(list -> Arrays.stream(list.split("[,;\\s]+")))
                .filter(number -> !number.isBlank())
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /**
     * Pieces looked for by number.
     *
     * @param pieces those that are here, in order, each once
     * @param unknown numbers as typed that name no piece, or more than one
     */
    record Looked(List<Saved<Piece>> pieces, List<String> unknown) {
        /** A sentence that names the numbers not here; empty where all are. */
        String trouble() {
            return unknown.isEmpty()
                    ? ""
                    : w(
                            "print.no-such-pieces",
                            "numbers",
                            unknown.stream().map(each -> "“" + each + "”").collect(Collectors.joining(", ")),
                            "others",
                            !pieces.isEmpty());
        }

        /** What stands in the field again: the numbers found, then those to be corrected. */
        String typed() {
            return Stream.concat(
                            pieces.stream().map(piece -> piece.record().number().value()), unknown.stream())
                    .collect(Collectors.joining(", "));
        }
    }

    /** The pieces meant: case does not matter, nor zeros before a figure where exactly one piece fits without them. */
    static Looked look(Site site, List<String> numbers) {
        Map<String, Saved<Piece>> pieces = new LinkedHashMap<>();
        List<String> unknown = new ArrayList<>();
        List<String> given = null;
        for (String number : numbers) {
            Optional<Saved<Piece>> exact = site.archive().ledger().find(Kinds.PIECE, number);
            if (exact.isEmpty()) {
                given = given == null ? site.archive().ledger().allIdsEverUsed(Kinds.PIECE) : given;
                exact = meant(site, number, given);
            }
            exact.ifPresentOrElse(
                    piece -> pieces.putIfAbsent(piece.record().number().value(), piece), () -> unknown.add(number));
        }
        return new Looked(
                List.copyOf(pieces.values()), unknown.stream().distinct().toList());
    }

    private static Optional<Saved<Piece>> meant(Site site, String number, List<String> given) {
        return fitting(site, given, each -> each.equalsIgnoreCase(number))
                .or(() -> fitting(site, given, each -> plain(each).equals(plain(number))));
    }

    private static Optional<Saved<Piece>> fitting(Site site, List<String> given, Predicate<String> fits) {
        List<Saved<Piece>> found = given.stream()
                .filter(fits)
                .flatMap(each -> site.archive().ledger().find(Kinds.PIECE, each).stream())
                .limit(2)
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private static String plain(String number) {
        return number.toLowerCase(Locale.ROOT).replaceAll("(?<![0-9])0+(?=[0-9])", "");
    }

    /** @throws NotFound naming the first number that is none of the archive's */
    static List<Saved<Piece>> saved(Site site, List<String> numbers) {
        Looked looked = look(site, numbers);
        if (!looked.unknown().isEmpty()) {
            throw NotFound.of(Kinds.PIECE, looked.unknown().get(0));
        }
        return looked.pieces();
    }
}
