package tenterbook.web.page;

import java.util.List;
import tenterbook.label.Issue;
import tenterbook.label.TagStanding.Standing;

/** Why a piece stands with its hang tag as a search says, in a few words for its card. */
final class TagReasons {
    private TagReasons() {}

    /**
     * @param standings of the piece, market by market
     * @param tag the facet's value, as in {@code us:lacking}
     */
    static List<String> of(List<Standing> standings, String tag) {
        return standings.stream()
                .filter(standing -> tag.startsWith(Issue.word(standing.market()) + ":"))
                .map(standing -> standing.market().name() + " tag: " + words(standing))
                .toList();
    }

    private static String words(Standing standing) {
        return switch (standing.state()) {
            case CURRENT -> "current";
            case NONE -> "none printed yet";
            case OUT_OF_DATE -> "out of date: " + String.join(", ", standing.reasons());
            case REFUSED -> "cannot be made: " + String.join("; ", standing.reasons());
        };
    }
}
