package tenterbook.web.fair;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.issue.FairNeed;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.fair.Fair;
import tenterbook.piece.fair.FairPiece;
import tenterbook.web.Site;
import tenterbook.words.Written;

/**
 * How a fair stands today.
 *
 * @param market whose rules hold for the tags; null where that is not known
 * @param lacking how many pieces lack what, those without a count left out
 */
public record FairStanding(
        Fair fair, @Nullable Market market, List<PieceRow> rows, Map<FairNeed.Kind, Integer> lacking) {
    /**
     * A piece chosen for it.
     *
     * @param picture null where it has no photograph that can be shown
     * @param needs what it lacks, in sentences
     */
    public record PieceRow(
            FairPiece chosen, String title, @Nullable Digest picture, String status, List<String> needs) {}

    public static FairStanding of(Site site, Fair fair) {
        Market market = FairNeed.market(fair).orElse(null);
        List<Piece> pieces = site.archive().piecesOf(fair);
        Map<String, List<Standing>> tags = market == null
                ? Map.of()
                : site.tags()
                        .of(pieces.stream().map(piece -> piece.number().value()).toList());
        List<PieceRow> rows = new ArrayList<>();
        Map<FairNeed.Kind, Integer> lacking = new EnumMap<>(FairNeed.Kind.class);
        for (PieceFacts facts : PieceReader.all(site.archive(), pieces)) {
            Piece piece = facts.piece();
            Standing tag = tags.getOrDefault(piece.number().value(), List.of()).stream()
                    .filter(each -> each.market() == market)
                    .findFirst()
                    .orElse(null);
            List<FairNeed> needs = FairNeed.of(facts, fair, tag, site.today());
            needs.stream().map(FairNeed::kind).distinct().forEach(kind -> lacking.merge(kind, 1, Integer::sum));
            rows.add(new PieceRow(
                    fair.piece(piece.number()).orElseThrow(),
                    piece.title(),
                    picture(site, facts),
                    facts.whereabouts().status() == null
                            ? w("pieces.status-not-recorded")
                            : w(facts.whereabouts().status()),
                    needs.stream()
                            .map(need -> Written.capital(w(need.sentence())))
                            .toList()));
        }
        return new FairStanding(fair, market, rows, lacking);
    }

    private static @Nullable Digest picture(Site site, PieceFacts facts) {
        return facts.pictures().stream()
                .map(PiecePhoto::photo)
                .filter(digest -> site.ledger()
                        .find(Kinds.PHOTO, digest.hex())
                        .filter(photo -> photo.record().viewable())
                        .isPresent())
                .findFirst()
                .orElse(null);
    }

    /** Whether nothing is left to be done, as far as is recorded. */
    public boolean ready() {
        return lacking.isEmpty() && fair.tasksOpen() == 0 && !rows.isEmpty();
    }
}
