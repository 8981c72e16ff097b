package tenterbook.label;

import java.util.List;
import java.util.Locale;
import tenterbook.words.Listing;

/** Small joinings of words. */
final class Wording {
    private Wording() {}

    static String capital(String text) {
        int first = text.isEmpty() ? 0 : text.offsetByCodePoints(0, 1);
        return text.substring(0, first).toUpperCase(Locale.ROOT) + text.substring(first);
    }

    /** 'A', 'A and B', 'A, B and C', with all but the first in lower case. */
    static String listed(List<String> names) {
        return Listing.and(names).inEnglish();
    }
}
