package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.form.TypedNumber;
import tenterbook.web.page.NotFound;

/** The pieces that a request names, by number or by a search. */
public final class ChosenPieces {
    /** A number is written with three spaces at most, as in 'K 26 7 b'. */
    private static final int MOST_WORDS = 4;

    private ChosenPieces() {}

    /**
     * Numbers of the pieces that are meant.
     *
     * @param behind changes that the search has not seen yet, so that pieces may be missing; 0 where they are named
     */
    public record Found(List<String> numbers, long behind) {
        /** A sentence where pieces may be missing, else an empty text. */
        public String trouble() {
            return behind == 0 ? "" : w("print.search-behind", "changes", behind);
        }
    }

    /**
     * The numbers under {@code pieces} or, without any, of what the search finds.
     *
     * @param search its parameters
     * @param most where more are found, the result has one more than that
     */
    public static Found find(
            Site site, Map<String, List<String>> parameters, Map<String, List<String>> search, int most) {
        List<String> numbers = named(site, parameters);
        long behind = 0;
        if (numbers.isEmpty()) {
            PieceQuery query = site.index().query(search).withSize(PieceQuery.MOST_SIZE);
            if (!query.narrows() && !parameters.containsKey("page")) {
                return new Found(List.of(), 0);
            }
            int hits = PieceQuery.MOST_SIZE;
            for (int page = 1; hits == PieceQuery.MOST_SIZE && numbers.size() <= most; page++) {
                SearchResult result = site.index().search(query.withPage(page));
                behind = Math.max(behind, result.behind());
                result.hits().forEach(hit -> numbers.add(hit.card().number()));
                hits = result.hits().size();
            }
        }
        return new Found(numbers.stream().distinct().limit(most + 1L).toList(), behind);
    }

    /** The numbers of pieces with commas, as the field for them takes them. */
    public static String joined(List<Saved<Piece>> pieces) {
        return pieces.stream().map(piece -> piece.record().shown().value()).collect(Collectors.joining(","));
    }

    /** Whether any number is typed under {@code pieces}. */
    public static boolean anyNamed(Map<String, List<String>> parameters) {
        return parts(parameters).findAny().isPresent();
    }

    /**
     * The numbers typed under {@code pieces}, in order, in a list that may be changed. Commas and spaces part them; words that name one
     * piece together and not each by itself, as 'K26 7', stay together.
     */
    public static List<String> named(Site site, Map<String, List<String>> parameters) {
        TypedNumber typed = new TypedNumber(site.archive());
        return parts(parameters)
                .flatMap(part -> numbers(typed, part).stream())
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static Stream<String> parts(Map<String, List<String>> parameters) {
        return parameters.getOrDefault("pieces", List.of()).stream()
                .flatMap(list -> Arrays.stream(list.split("[,;\\r\\n]+")))
                .map(String::strip)
                .filter(part -> !part.isEmpty());
    }

    private static List<String> numbers(TypedNumber typed, String part) {
        List<String> words = List.of(part.split("\\s+"));
        List<String> numbers = new ArrayList<>();
        int at = 0;
        while (at < words.size()) {
            int end = Math.min(words.size(), at + MOST_WORDS);
            while (end > at + 1 && !together(typed, words.subList(at, end))) {
                end--;
            }
            numbers.add(String.join(" ", words.subList(at, end)));
            at = end;
        }
        return numbers;
    }

    private static boolean together(TypedNumber typed, List<String> words) {
        return words.stream().anyMatch(word -> typed.saved(word).isEmpty())
                && typed.saved(String.join(" ", words)).isPresent();
    }

    /**
     * Pieces looked up by number.
     *
     * @param pieces those found, in order, each once
     * @param unknown numbers as typed that name no piece, or more than one
     */
    public record LookedUp(List<Saved<Piece>> pieces, List<String> unknown) {
        /** A sentence that names the unknown numbers; empty where there is none. */
        public String trouble() {
            return unknown.isEmpty()
                    ? ""
                    : w(
                            "print.no-such-pieces",
                            "numbers",
                            unknown.stream().map(each -> "“" + each + "”").collect(Collectors.joining(", ")),
                            "others",
                            !pieces.isEmpty());
        }

        /** For the field again: the numbers found, then those to be corrected. */
        public String typed() {
            return Stream.concat(
                            pieces.stream().map(piece -> piece.record().shown().value()), unknown.stream())
                    .collect(Collectors.joining(", "));
        }
    }

    /** In any writing that {@link TypedNumber} reads. */
    public static LookedUp lookUp(Site site, List<String> numbers) {
        Map<String, Saved<Piece>> pieces = new LinkedHashMap<>();
        List<String> unknown = new ArrayList<>();
        TypedNumber typed = new TypedNumber(site.archive());
        for (String number : numbers) {
            typed.saved(number)
                    .ifPresentOrElse(
                            piece -> pieces.putIfAbsent(piece.record().number().value(), piece),
                            () -> unknown.add(number));
        }
        return new LookedUp(
                List.copyOf(pieces.values()), unknown.stream().distinct().toList());
    }

    /** @throws NotFound naming the first unknown number */
    public static List<Saved<Piece>> saved(Site site, List<String> numbers) {
        LookedUp looked = lookUp(site, numbers);
        if (!looked.unknown().isEmpty()) {
            throw NotFound.of(Kinds.PIECE, looked.unknown().get(0));
        }
        return looked.pieces();
    }
}
