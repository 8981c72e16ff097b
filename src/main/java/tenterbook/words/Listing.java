package tenterbook.words;

import com.ibm.icu.text.ListFormatter;
import java.util.List;

/**
 * Several things in a sentence: 'a, b and c' or 'a, b or c'.
 *
 * @param items each a {@link Written} or written as it is
 */
public record Listing(List<?> items, boolean or) implements Written {
    public static Listing and(List<?> items) {
        return new Listing(items, false);
    }

    public static Listing or(List<?> items) {
        return new Listing(items, true);
    }

    public Listing {
        items = List.copyOf(items);
    }

    @Override
    public String in(Conventions conventions) {
        List<String> texts = items.stream()
                .map(item -> item instanceof Written written ? written.in(conventions) : item.toString())
                .toList();
        return ListFormatter.getInstance(
                        conventions.language(),
                        or ? ListFormatter.Type.OR : ListFormatter.Type.AND,
                        ListFormatter.Width.WIDE)
                .format(texts);
    }
}
