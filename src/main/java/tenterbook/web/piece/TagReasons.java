package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.util.List;
import tenterbook.labelling.issue.HangTagStatus.Standing;

/** Why a search for hang tags finds a piece, in a few words for its card. */
final class TagReasons {
    private TagReasons() {}

    /**
     * @param standings of the piece, market by market
     * @param tag the facet's value, as in {@code us:lacking}
     */
    static List<String> of(List<Standing> standings, String tag) {
        return standings.stream()
                .filter(standing -> tag.startsWith(standing.market().code() + ":"))
                .map(TagReasons::words)
                .toList();
    }

    private static String words(Standing standing) {
        String market = standing.market().name();
        return switch (standing.state()) {
            case CURRENT -> w("print.tag.current", "market", market);
            case NONE -> w("print.tag.none", "market", market);
            case OUT_OF_DATE ->
                w("print.tag.out-of-date", "market", market, "reasons", String.join(", ", standing.reasons()));
            case REFUSED -> w("print.tag.refused", "market", market, "reasons", String.join("; ", standing.reasons()));
        };
    }
}
