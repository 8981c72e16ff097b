package tenterbook.search.find;

import java.util.List;

/**
 * The pieces that a search found, by number.
 *
 * @param numbers the first of them, in the order of the search
 * @param total how many were found
 * @param behind as {@link SearchResult#behind}
 */
public record FoundNumbers(List<String> numbers, long total, long behind) {
    public FoundNumbers {
        numbers = List.copyOf(numbers);
    }
}
