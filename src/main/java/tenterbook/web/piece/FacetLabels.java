package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.util.Locale;
import java.util.stream.Stream;
import tenterbook.labelling.issue.HangTagStatus;
import tenterbook.piece.Category;
import tenterbook.piece.Status;
import tenterbook.search.facet.FacetCount;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Lacking;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * The values of a facet in the reader's language: those that the program names. Names that a person gave, as of boards and cloths, stay as
 * the index has them, and so does a value that is no longer known.
 */
final class FacetLabels {
    private FacetLabels() {}

    static String of(Facet facet, FacetCount count) {
        return of(facet, count.value(), count.label());
    }

    /** @param otherwise the label of a value that the program does not name */
    static String of(Facet facet, String value, String otherwise) {
        if (facet.equals(Facet.STATUS)) {
            return choice(Status.values(), value, otherwise);
        }
        if (facet.equals(Facet.CATEGORY)) {
            return choice(Category.values(), value, otherwise);
        }
        if (facet.equals(Facet.LACKING)) {
            return Stream.of(Lacking.values())
                    .filter(each -> each.code().equals(value))
                    .findFirst()
                    .map(each -> w(each))
                    .orElse(otherwise);
        }
        if (facet.equals(Facet.EXAMINED)) {
            return switch (value) {
                case "never" -> w("search.never");
                case "year-not-known" -> w("search.year-not-known");
                default -> otherwise;
            };
        }
        if (facet.equals(Facet.COLOUR)) {
            String key = "colour.name." + value.replace(' ', '-');
            return Message.exists(key) ? w(Message.of(key)) : otherwise;
        }
        return facet.equals(TagFacet.TAG) ? tag(value, otherwise) : otherwise;
    }

    private static <E extends Enum<E> & Worded> String choice(E[] choices, String value, String otherwise) {
        if (value.equals(FacetValues.word(null))) {
            return w("search.not-recorded");
        }
        return Stream.of(choices)
                .filter(each -> FacetValues.word(each).equals(value))
                .findFirst()
                .map(each -> w(each))
                .orElse(otherwise);
    }

    private static String tag(String value, String otherwise) {
        int colon = value.indexOf(':');
        if (colon < 0) {
            return otherwise;
        }
        String market = value.substring(0, colon).toUpperCase(Locale.ROOT);
        String state = value.substring(colon + 1);
        if (state.equals(TagFacet.LACKING)) {
            return w("search.tag-needed", "market", market);
        }
        return Stream.of(HangTagStatus.State.values())
                .filter(each -> TagFacet.word(each).equals(state))
                .findFirst()
                .map(each -> w("search.tag", "market", market, "state", each))
                .orElse(otherwise);
    }
}
