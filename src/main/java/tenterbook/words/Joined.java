package tenterbook.words;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Several texts one after another, as sentences of a paragraph or items of a row; those that write nothing are left out.
 * Not for the parts of one sentence: their order differs between languages.
 *
 * @param items each a {@link Written} or written as it is
 * @param between stands between two of them, as in "; "
 */
public record Joined(String between, List<?> items) implements Written {
    /** Writes nothing. */
    public static final Joined NOTHING = new Joined("", List.of());

    public Joined {
        items = List.copyOf(items);
    }

    public static Joined with(String between, Object... items) {
        return new Joined(between, List.of(items));
    }

    @Override
    public String in(Conventions conventions) {
        return items.stream()
                .map(item -> item instanceof Written written ? written.in(conventions) : item.toString())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(between));
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
