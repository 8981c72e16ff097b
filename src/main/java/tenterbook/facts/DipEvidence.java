package tenterbook.facts;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.space.Lab;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;
import tenterbook.recipe.dip.DipCount;
import tenterbook.recipe.dip.DipPoint;
import tenterbook.recipe.dip.DipTally;
import tenterbook.recipe.dip.Group;
import tenterbook.words.Written;

/**
 * The archive's pieces as evidence of depth by number of dips.
 *
 * <p>A piece counts where the ground of its newest state is named on a photograph, every clamping it went through has a dip
 * count with both ends known, all in one vat, and only dips coloured the ground: a bath with dye or a mordant in any clamping
 * excludes it, because the curve would then be of two dyes. Dips of several states add up, counted by the rule of {@link
 * DipTally}.
 */
public final class DipEvidence {
    private DipEvidence() {}

    /**
     * A ground colour with its dips.
     *
     * @param piece number
     * @param calibrated whether the colour comes from a calibrated photograph
     * @param disagreements in the record of its dips, in sentences
     */
    public record Dyed(
            String piece, DipCount dips, Lab ground, Group group, boolean calibrated, List<Written> disagreements) {}

    /** All pieces that count, in order of number. Shared records are read once. */
    public static List<Dyed> of(Archive archive) {
        Map<ClampingId, Clamping> clampings = all(archive, Kinds.CLAMPING, Clamping::id);
        Map<LotId, Lot> lots = all(archive, Kinds.LOT, Lot::id);
        Map<ClothId, Cloth> cloths = all(archive, Kinds.CLOTH, Cloth::id);
        Studio studio = archive.studio();
        List<Dyed> dyed = new ArrayList<>();
        for (Saved<Piece> saved : archive.ledger().all(Kinds.PIECE)) {
            Piece piece = saved.record();
            List<Clamping> made = piece.made().stream()
                    .map(in -> clampings.get(in.clamping()))
                    .filter(Objects::nonNull)
                    .toList();
            if (made.size() == piece.made().size()) {
                // Photographs and examinations have no dips, so they are not read.
                of(new PieceFacts(
                                studio, piece, made, Map.of(), cloths, lots, Map.of(), Map.of(), Map::of, List.of(),
                                List::of, null))
                        .ifPresent(dyed::add);
            }
        }
        return dyed;
    }

    private static <I, T> Map<I, T> all(Archive archive, Kind<T> kind, Function<T, I> id) {
        return archive.ledger().all(kind).stream()
                .map(Saved::record)
                .collect(Collectors.toMap(id, Function.identity()));
    }

    private static Optional<Dyed> of(PieceFacts facts) {
        Optional<ColourRegion> ground = ground(facts.piece());
        DipTally tally = facts.dips();
        Optional<DipCount> dips = tally.counted().filter(count -> count.high() > 0);
        Set<String> vats = facts.clampings().stream()
                .flatMap(clamping -> clamping.steps().stream())
                .filter(Step::dipped)
                .map(Step::vat)
                .collect(Collectors.toCollection(TreeSet::new));
        Cloths cloth = facts.cloth();
        if (ground.isEmpty()
                || dips.isEmpty()
                || vats.size() != 1
                || cloth.cloths().isEmpty()
                || facts.clampings().stream().anyMatch(clamping -> dyedOtherwise(clamping, facts.lots()))) {
            return Optional.empty();
        }
        return Optional.of(new Dyed(
                facts.piece().number().value(),
                dips.get(),
                ground.get().colour(),
                new Group(cloth.cloths().get(0).id().value(), vats.iterator().next()),
                ground.get().calibrated(),
                tally.disagreements()));
    }

    /** The region itself, since only that tells whether it was calibrated. */
    private static Optional<ColourRegion> ground(Piece piece) {
        return piece.photos().stream()
                .filter(photo -> photo.state() == piece.state())
                .map(PiecePhoto::regions)
                .flatMap(List::stream)
                .filter(region -> region.role() == ColourRole.GROUND)
                .findFirst();
    }

    private static boolean dyedOtherwise(Clamping clamping, Map<LotId, Lot> lots) {
        return clamping.steps().stream()
                .filter(step -> step.kind() == StepKind.BATH || step.kind() == StepKind.MORDANTING)
                .flatMap(step -> step.charges().stream())
                .map(charge -> lots.get(charge.lot()))
                .filter(Objects::nonNull)
                .anyMatch(lot -> lot.role() == Role.DYE || lot.role() == Role.MORDANT);
    }

    /** As points of a curve. */
    public static List<DipPoint> points(List<Dyed> dyed) {
        return dyed.stream().map(DipEvidence::point).toList();
    }

    static DipPoint point(Dyed dyed) {
        return new DipPoint(dyed.dips(), DepthOfShade.byPhoto(dyed.ground()), dyed.piece());
    }
}
