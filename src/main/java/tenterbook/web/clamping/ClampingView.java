package tenterbook.web.clamping;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.Difference;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.Cautions;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Doubts;
import tenterbook.recipe.LayerMap;
import tenterbook.recipe.RecipeFigures;
import tenterbook.recipe.Step;
import tenterbook.words.Written;

/**
 * A clamping as pages show it.
 *
 * @param lots by name
 * @param differs from the clamping it was copied from
 */
public record ClampingView(
        Clamping clamping,
        int version,
        RecipeFigures figures,
        Map<LotId, Lot> lots,
        Map<ClothId, Cloth> cloths,
        List<Written> cautions,
        List<Written> doubts,
        LayerMap layers,
        List<PieceNumber> pieces,
        List<Difference> differs) {
    public String lotTitle(LotId id) {
        return Optional.ofNullable(lots.get(id)).map(Lot::title).orElse(String.valueOf(id));
    }

    public String clothTitle(ClothId id) {
        return Optional.ofNullable(cloths.get(id)).map(Cloth::title).orElse(String.valueOf(id));
    }

    public static ClampingView of(Archive archive, Clamping clamping, int version) {
        Map<LotId, Lot> lots = new HashMap<>();
        clamping.lots()
                .filter(Objects::nonNull)
                .forEach(id -> archive.lot(id.value()).ifPresent(lot -> lots.put(id, lot)));
        Map<ClothId, Cloth> cloths = new HashMap<>();
        clamping.cuts().stream()
                .map(cut -> cut.cloth())
                .filter(Objects::nonNull)
                .forEach(id -> archive.cloth(id.value()).ifPresent(cloth -> cloths.put(id, cloth)));
        return new ClampingView(
                clamping,
                version,
                RecipeFigures.of(clamping, cloths),
                lots,
                cloths,
                cautions(clamping, lots),
                Doubts.of(clamping, cloths, lots),
                clamping.fold().folds().isEmpty()
                        ? null
                        : LayerMap.of(clamping.fold().folds()),
                archive.piecesOf(clamping),
                differs(archive, clamping));
    }

    private static List<Written> cautions(Clamping clamping, Map<LotId, Lot> lots) {
        List<Written> cautions = new ArrayList<>();
        for (Step step : clamping.steps()) {
            List<Lot> used = step.charges().stream()
                    .map(charge -> lots.get(charge.lot()))
                    .filter(Objects::nonNull)
                    .toList();
            cautions.addAll(Cautions.of(step, used));
        }
        cautions.addAll(Cautions.ofClamping());
        return cautions.stream().distinct().toList();
    }

    private static List<Difference> differs(Archive archive, Clamping clamping) {
        return Optional.ofNullable(clamping.copiedFrom())
                .flatMap(id -> archive.clamping(id.value()))
                .map(other -> Difference.between(ClampingRecord.CLAMPING, other, clamping).stream()
                        .filter(difference -> !List.of("id", "copiedFrom").contains(difference.name()))
                        .toList())
                .orElse(List.of());
    }
}
