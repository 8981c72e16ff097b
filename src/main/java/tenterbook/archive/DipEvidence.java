package tenterbook.archive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tenterbook.colour.DepthOfShade;
import tenterbook.colour.Lab;
import tenterbook.ledger.Saved;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.measure.Quantity;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;
import tenterbook.recipe.dip.DipCount;
import tenterbook.recipe.dip.DipPoint;
import tenterbook.recipe.dip.Group;

/**
 * What the archive's pieces say about dips and depth.
 *
 * <p>A piece speaks where the ground of its newest state is named on a photograph, every clamping it went through has a
 * dip count with both ends known, all in one vat, and nothing but dips coloured the ground: a bath with dye or a mordant
 * in any clamping leaves it out, because the curve would then be of two dyes. Dips of several states add up.
 */
public final class DipEvidence {
    private DipEvidence() {}

    /**
     * A ground colour with its dips.
     *
     * @param piece number
     * @param calibrated whether the colour comes from a calibrated photograph
     */
    public record Dyed(String piece, DipCount dips, Lab ground, Group group, boolean calibrated) {}

    /** All pieces that speak, in order of number. */
    public static List<Dyed> of(Archive archive) {
        Map<String, Clamping> clampings = new HashMap<>();
        archive.ledger().all(Kinds.CLAMPING).stream()
                .map(Saved::record)
                .forEach(clamping -> clampings.put(clamping.id().value(), clamping));
        Map<String, Role> roles = new HashMap<>();
        archive.ledger().all(Kinds.LOT).stream()
                .map(Saved::record)
                .forEach((Lot lot) -> roles.put(lot.id().value(), lot.role()));
        List<Dyed> all = new ArrayList<>();
        for (Saved<Piece> saved : archive.ledger().all(Kinds.PIECE)) {
            of(saved.record(), clampings, roles).ifPresent(all::add);
        }
        return all;
    }

    private static Optional<Dyed> of(Piece piece, Map<String, Clamping> clampings, Map<String, Role> roles) {
        Optional<ColourRegion> ground = ground(piece);
        if (ground.isEmpty() || piece.made().isEmpty()) {
            return Optional.empty();
        }
        int low = 0;
        int high = 0;
        Set<String> vats = new TreeSet<>();
        String cloth = "";
        for (var made : piece.made()) {
            Clamping clamping = clampings.get(made.clamping().value());
            if (clamping == null || dyedOtherwise(clamping, roles)) {
                return Optional.empty();
            }
            if (cloth.isEmpty()) {
                cloth = clamping.cuts().stream()
                        .filter(cut -> cut.cloth() != null)
                        .map(cut -> cut.cloth().value())
                        .findFirst()
                        .orElse("");
            }
            for (Step step : clamping.steps()) {
                if (step.kind() == StepKind.DIPS) {
                    Optional<DipCount> dips = dips(step);
                    if (dips.isEmpty()) {
                        return Optional.empty();
                    }
                    low += dips.get().low();
                    high += dips.get().high();
                    vats.add(step.vat());
                }
            }
        }
        if (high == 0 || vats.size() != 1 || cloth.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Dyed(
                piece.number().value(),
                new DipCount(low, high),
                ground.get().colour(),
                new Group(cloth, vats.iterator().next()),
                ground.get().calibrated()));
    }

    private static Optional<ColourRegion> ground(Piece piece) {
        return piece.photos().stream()
                .filter(photo -> photo.state() == piece.state())
                .map(PiecePhoto::regions)
                .flatMap(List::stream)
                .filter(region -> region.role() == ColourRole.GROUND)
                .findFirst();
    }

    private static boolean dyedOtherwise(Clamping clamping, Map<String, Role> roles) {
        return clamping.steps().stream()
                .filter(step -> step.kind() == StepKind.BATH || step.kind() == StepKind.MORDANTING)
                .flatMap(step -> step.charges().stream())
                .filter(charge -> charge.lot() != null)
                .map(charge -> roles.get(charge.lot().value()))
                .anyMatch(role -> role == Role.DYE || role == Role.MORDANT);
    }

    private static Optional<DipCount> dips(Step step) {
        if (!step.dips().dips().isEmpty()) {
            return Optional.of(DipCount.exactly(step.dips().dips().size()));
        }
        Quantity count = step.dips().count();
        if (!count.bounded() || count.low() < 0 || count.high() > 200) {
            return Optional.empty();
        }
        return Optional.of(new DipCount((int) Math.floor(count.low()), (int) Math.ceil(count.high())));
    }

    /** The points of one scale; a colour too deep for a photograph to tell is left out. */
    public static List<DipPoint> points(List<Dyed> dyed, DepthOfShade.Channel channel) {
        List<DipPoint> points = new ArrayList<>();
        for (Dyed each : dyed) {
            DepthOfShade.byPhoto(each.ground(), channel)
                    .value()
                    .ifPresent(shade -> points.add(new DipPoint(each.dips(), shade, each.piece(), each.group())));
        }
        return points;
    }
}
