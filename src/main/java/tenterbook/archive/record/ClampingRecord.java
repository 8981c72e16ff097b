package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.CLOTH_LENGTH;
import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.CELSIUS;
import static tenterbook.measure.Unit.COUNT;
import static tenterbook.measure.Unit.GRAM;
import static tenterbook.measure.Unit.HOUR;
import static tenterbook.measure.Unit.LITRE;
import static tenterbook.measure.Unit.MINUTE;
import static tenterbook.measure.Unit.PERCENT;
import static tenterbook.measure.Unit.PH;
import static tenterbook.measure.Unit.RATIO;

import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.board.BoardId;
import tenterbook.material.ClothId;
import tenterbook.material.LotId;
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
import tenterbook.recipe.WhereDyed;

/** A clamping: boards, folds, cuts of cloth and steps. */
public final class ClampingRecord {
    private static final Part<BoardUse> BOARD_USE = Part.<BoardUse>of("board-use")
            .field("board", Plain.identifier(BoardId::new), BoardUse::board)
            .required()
            .blamed()
            .text("state", BoardUse::state)
            .built(v -> new BoardUse(v.get("board"), v.get("state")));

    private static final Part<Fold> FOLD = Part.<Fold>of("fold")
            .choice("axis", StoredCodes.FOLD_AXIS, Fold::axis)
            .required()
            .choice("style", StoredCodes.FOLD_STYLE, Fold::style)
            .required()
            .field("panels", Numeric.whole("input.panels"), Fold::panels)
            .required()
            .blamed()
            .built(v -> new Fold(v.get("axis"), v.get("style"), v.get("panels", 0)));

    private static final Part<FoldScheme> FOLD_SCHEME = Part.<FoldScheme>of("fold-scheme")
            .list("folds", FOLD, FoldScheme::folds)
            .field("layersCounted", quantity(COUNT), FoldScheme::layersCounted)
            .blamed()
            .text("note", FoldScheme::note)
            .built(v -> new FoldScheme(v.get("folds"), v.get("layersCounted"), v.get("note")));

    private static final Part<Cut> CUT = Part.<Cut>of("cut")
            .field("cloth", Plain.identifier(ClothId::new), Cut::cloth)
            .required()
            .field("length", CLOTH_LENGTH, Cut::length)
            .field("width", CLOTH_LENGTH, Cut::width)
            .field("weighed", quantity(GRAM), Cut::weighed)
            .field("count", quantity(COUNT), Cut::count)
            .built(v -> new Cut(v.get("cloth"), v.get("length"), v.get("width"), v.get("weighed"), v.get("count")));

    private static final Part<Charge> CHARGE = Part.<Charge>of("charge")
            .field("lot", Plain.identifier(LotId::new), Charge::lot)
            .required()
            .field("wof", quantity(PERCENT), Charge::wof)
            .field("weighed", quantity(GRAM), Charge::weighed)
            .built(v -> new Charge(v.get("lot"), v.get("wof"), v.get("weighed")));

    private static final Part<Dip> DIP = Part.<Dip>of("dip")
            .field("in", Plain.WALL_CLOCK, Dip::in)
            .field("out", Plain.WALL_CLOCK, Dip::out)
            .blamed()
            .built(v -> new Dip(v.get("in"), v.get("out")));

    private static final Part<DipSeries> DIPS = Part.<DipSeries>of("dip-series")
            .field("count", quantity(COUNT), DipSeries::count)
            .field("each", quantity(MINUTE), DipSeries::each)
            .field("airing", quantity(MINUTE), DipSeries::airing)
            .list("dips", DIP, DipSeries::dips)
            .built(v -> new DipSeries(v.get("count"), v.get("each"), v.get("airing"), v.get("dips")));

    private static final Part<Step> STEP = Part.<Step>of("step")
            .choice("kind", StoredCodes.STEP_KIND, Step::kind)
            .required()
            .field("when", DATE, Step::when)
            .list("charges", CHARGE, Step::charges)
            .field("liquor", quantity(LITRE), Step::liquor)
            .field("liquorRatio", quantity(RATIO), Step::liquorRatio)
            .field("temperature", quantity(CELSIUS), Step::temperature)
            .field("ph", quantity(PH), Step::ph)
            .field("duration", quantity(MINUTE), Step::duration)
            .text("vat", Step::vat)
            .list("holes", Plain.TEXT, Step::holes)
            .field("dips", DIPS, Step::dips)
            .text("notes", Step::notes)
            .built(v -> new Step(
                    v.get("kind"),
                    v.get("when"),
                    v.get("charges"),
                    v.get("liquor"),
                    v.get("liquorRatio"),
                    v.get("temperature"),
                    v.get("ph"),
                    v.get("duration"),
                    v.get("vat"),
                    v.get("holes"),
                    v.get("dips"),
                    v.get("notes")));

    public static final Part<Clamping> CLAMPING = Part.<Clamping>of("clamping")
            .field("id", Plain.identifier(ClampingId::new), Clamping::id)
            .required()
            .key()
            .text("title", Clamping::title)
            .blamed()
            .field("when", DATE, Clamping::when)
            .list("boards", BOARD_USE, Clamping::boards)
            .field("fold", FOLD_SCHEME, Clamping::fold)
            .list("cuts", CUT, Clamping::cuts)
            .list("steps", STEP, Clamping::steps)
            .field("clamped", quantity(HOUR), Clamping::clamped)
            .text("pressure", Clamping::pressure)
            .text("water", Clamping::water)
            .text("lesson", Clamping::lesson)
            .text("notes", Clamping::notes)
            .field("copiedFrom", Plain.identifier(ClampingId::new), Clamping::copiedFrom)
            .text("dyer", clamping -> clamping.where().dyer())
            .text("place", clamping -> clamping.where().place())
            .text("country", clamping -> clamping.where().country())
            .field("materials", Measures.MONEY, Clamping::materials)
            .personal()
            .field("hours", quantity(HOUR), Clamping::hours)
            .personal()
            .built(v -> new Clamping(
                    v.get("id"),
                    v.get("title"),
                    v.get("when"),
                    v.get("boards"),
                    v.get("fold"),
                    v.get("cuts"),
                    v.get("steps"),
                    v.get("clamped"),
                    v.get("pressure"),
                    v.get("water"),
                    v.get("lesson"),
                    v.get("notes"),
                    v.get("copiedFrom"),
                    new WhereDyed(v.get("dyer"), v.get("place"), v.get("country")),
                    v.get("materials"),
                    v.get("hours")));

    private ClampingRecord() {}
}
