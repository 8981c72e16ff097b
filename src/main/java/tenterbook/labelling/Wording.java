package tenterbook.labelling;

import java.util.List;
import tenterbook.words.Listing;

/** Joins words. */
final class Wording {
    private Wording() {}

    /** 'A', 'A and B', 'A, B and C', with all but the first in lower case. */
    static String listed(List<String> names) {
        return Listing.and(names).inEnglish();
    }
}
