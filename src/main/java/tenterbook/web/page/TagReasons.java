package tenterbook.web.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.label.Gathering;
import tenterbook.label.Issue;
import tenterbook.label.LabelBlocked;
import tenterbook.label.LabelKind;
import tenterbook.label.LabelText;
import tenterbook.label.PrintSettings;
import tenterbook.label.Today;
import tenterbook.label.rule.Market;
import tenterbook.piece.Piece;
import tenterbook.web.Site;

/** Why a piece stands with its hang tag as a search says, in a few words for its card. */
final class TagReasons {
    private TagReasons() {}

    /** @param tag the facet's value, as in {@code us:lacking} */
    static List<String> of(Site site, Piece piece, String tag) {
        Market market = Stream.of(Market.values())
                .filter(each -> tag.startsWith(Issue.word(each) + ":"))
                .findFirst()
                .orElse(null);
        if (market == null) {
            return List.of();
        }
        String name = market.name() + " tag: ";
        Optional<PaperView> newest = PaperView.of(site, piece).stream()
                .filter(view -> view.paper().kind().equals(Issue.word(LabelKind.HANG_TAG))
                        && view.paper().market().equals(Issue.word(market)))
                .findFirst();
        if (newest.isPresent()) {
            Today today = newest.get().today().orElseThrow();
            return switch (today.state()) {
                case CURRENT -> List.of(name + "current");
                case REFUSED ->
                    List.of(name + "cannot be made: " + today.refused().get(0));
                case NOT_COMPARED -> List.of(name + "kept in an older form; issue it anew");
                case OUT_OF_DATE ->
                    List.of(name + "out of date: "
                            + today.changes().stream()
                                    .map(Today.Change::part)
                                    .distinct()
                                    .collect(Collectors.joining(", ")));
            };
        }
        try {
            LabelText.of(Gathering.of(site.archive(), piece), PrintSettings.of(LabelKind.HANG_TAG, market));
            return List.of(name + "none printed yet");
        } catch (LabelBlocked e) {
            return List.of(name + "cannot be made: "
                    + e.pieces().get(0).refusals().get(0).found());
        }
    }
}
