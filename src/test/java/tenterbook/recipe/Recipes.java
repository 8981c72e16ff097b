package tenterbook.recipe;

import java.util.List;
import java.util.Map;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;

/** Short ways to write clampings in tests; every quantity is text, as a maker types it. */
final class Recipes {
    private Recipes() {}

    static Cloth cloth(String id, String fibre, String arealWeight) {
        return new Cloth(
                new ClothId(id),
                "",
                List.of(new FibreShare(fibre, 100.0, "")),
                "",
                QuantityText.read(arealWeight, Unit.GRAM_PER_SQUARE_METRE),
                null,
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                "");
    }

    static Map<ClothId, Cloth> bolts(Cloth... cloths) {
        return java.util.Arrays.stream(cloths).collect(java.util.stream.Collectors.toMap(Cloth::id, cloth -> cloth));
    }

    static Cut cut(String cloth, String length, String width, String weighed, String count) {
        return new Cut(
                new ClothId(cloth),
                QuantityText.read(length, Unit.CENTIMETRE),
                QuantityText.read(width, Unit.CENTIMETRE),
                QuantityText.read(weighed, Unit.GRAM),
                QuantityText.read(count, Unit.COUNT));
    }

    static Charge charge(String lot, String wof, String weighed) {
        return new Charge(new LotId(lot), QuantityText.read(wof, Unit.PERCENT), QuantityText.read(weighed, Unit.GRAM));
    }

    static Lot lot(String id, String name) {
        return new Lot(new LotId(id), Role.DYE, name, null, "", "", "", "", "", null, null, null, "", null);
    }

    static Step bath(StepKind kind, String liquor, String ratio, String temperature, String ph, Charge... charges) {
        return new Step(
                kind,
                null,
                List.of(charges),
                QuantityText.read(liquor, Unit.LITRE),
                QuantityText.read(ratio, Unit.RATIO),
                QuantityText.read(temperature, Unit.CELSIUS),
                QuantityText.read(ph, Unit.PH),
                null,
                "",
                null,
                null,
                "");
    }

    static Step dips(String count, String each, String airing, Dip... timed) {
        var series = new DipSeries(
                QuantityText.read(count, Unit.COUNT),
                QuantityText.read(each, Unit.MINUTE),
                QuantityText.read(airing, Unit.MINUTE),
                List.of(timed));
        return new Step(StepKind.DIPS, null, null, null, null, null, null, null, "", null, series, "");
    }

    static Clamping clamping(FoldScheme fold, List<Cut> cuts, Step... steps) {
        return new Clamping(
                new ClampingId("C1"),
                "",
                null,
                null,
                fold,
                cuts,
                List.of(steps),
                null,
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                null);
    }
}
