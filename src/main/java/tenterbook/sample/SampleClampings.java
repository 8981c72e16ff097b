package tenterbook.sample;

import java.time.LocalDateTime;
import tenterbook.board.BoardId;
import tenterbook.material.ClothId;
import tenterbook.material.LotId;
import tenterbook.measure.Unit;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Cut;
import tenterbook.recipe.Dip;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.Fold;
import tenterbook.recipe.FoldScheme;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

/** Reads the sample studio's clampings. */
final class SampleClampings {
    private SampleClampings() {}

    static Clamping clamping(Entered e) {
        return new Clamping(
                new ClampingId(e.text("id")),
                e.text("title"),
                e.date("when"),
                e.each("boards", use -> new BoardUse(new BoardId(use.text("board")), use.text("state"))),
                new FoldScheme(
                        e.each(
                                "folds",
                                fold -> new Fold(
                                        fold.choice("axis", Fold.Axis.values()),
                                        fold.choice("style", Fold.Style.values()),
                                        fold.number("panels").intValue())),
                        e.quantity("layersCounted", Unit.COUNT),
                        e.text("foldNote")),
                e.each(
                        "cuts",
                        cut -> new Cut(
                                new ClothId(cut.text("cloth")),
                                cut.quantity("length", Unit.CENTIMETRE),
                                cut.quantity("width", Unit.CENTIMETRE),
                                cut.quantity("weighed", Unit.GRAM),
                                cut.quantity("count", Unit.COUNT))),
                e.each("steps", SampleClampings::step),
                e.quantity("clamped", Unit.HOUR),
                e.text("pressure"),
                e.text("water"),
                e.text("lesson"),
                e.text("notes"),
                e.named("copiedFrom", ClampingId::new));
    }

    private static Step step(Entered e) {
        return new Step(
                e.choice("kind", StepKind.values()),
                e.date("when"),
                e.each(
                        "charges",
                        charge -> new Charge(
                                new LotId(charge.text("lot")),
                                charge.quantity("wof", Unit.PERCENT),
                                charge.quantity("weighed", Unit.GRAM))),
                e.quantity("liquor", Unit.LITRE),
                e.quantity("liquorRatio", Unit.RATIO),
                e.quantity("temperature", Unit.CELSIUS),
                e.quantity("ph", Unit.PH),
                e.quantity("duration", Unit.MINUTE),
                e.text("vat"),
                e.words("holes"),
                new DipSeries(
                        e.quantity("dips", Unit.COUNT),
                        e.quantity("each", Unit.MINUTE),
                        e.quantity("airing", Unit.MINUTE),
                        e.each(
                                "timed",
                                dip -> new Dip(
                                        LocalDateTime.parse(dip.text("in")), LocalDateTime.parse(dip.text("out"))))),
                e.text("notes"));
    }
}
