package tenterbook.web.form;

import static tenterbook.measure.Unit.CELSIUS;
import static tenterbook.measure.Unit.CENTIMETRE;
import static tenterbook.measure.Unit.COUNT;
import static tenterbook.measure.Unit.GRAM;
import static tenterbook.measure.Unit.HOUR;
import static tenterbook.measure.Unit.LITRE;
import static tenterbook.measure.Unit.MINUTE;
import static tenterbook.measure.Unit.PERCENT;
import static tenterbook.measure.Unit.PH;
import static tenterbook.measure.Unit.RATIO;

import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.ledger.Kind;
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
import tenterbook.recipe.StepKind;

/** A clamping with its boards, folds, cuts and steps. */
public final class ClampingForm implements RecordForm<Clamping> {
    @Override
    public Kind<Clamping> kind() {
        return Kinds.CLAMPING;
    }

    @Override
    public Form filled(Clamping clamping) {
        Form form = Form.empty();
        form.put("id", clamping.id()).put("title", clamping.title());
        form.put("when", clamping.when());
        for (int i = 0; i < clamping.boards().size(); i++) {
            BoardUse use = clamping.boards().get(i);
            form.row("boards", i).put("use", use.state().isEmpty() ? use.board() : use.board() + "/" + use.state());
        }
        for (int i = 0; i < clamping.fold().folds().size(); i++) {
            Fold fold = clamping.fold().folds().get(i);
            form.row("folds", i)
                    .put("axis", fold.axis())
                    .put("style", fold.style())
                    .put("panels", fold.panels());
        }
        form.put("layersCounted", clamping.fold().layersCounted());
        form.put("foldNote", clamping.fold().note());
        for (int i = 0; i < clamping.cuts().size(); i++) {
            Cut cut = clamping.cuts().get(i);
            Form row = form.row("cuts", i);
            row.put("cloth", cut.cloth());
            row.put("length", cut.length());
            row.put("width", cut.width());
            row.put("weighed", cut.weighed());
            row.put("count", cut.count());
        }
        for (int i = 0; i < clamping.steps().size(); i++) {
            fillStep(form.row("steps", i), clamping.steps().get(i));
        }
        form.put("clamped", clamping.clamped());
        form.put("pressure", clamping.pressure()).put("water", clamping.water());
        form.put("lesson", clamping.lesson()).put("notes", clamping.notes()).put("copiedFrom", clamping.copiedFrom());
        return form;
    }

    private static void fillStep(Form row, Step step) {
        row.put("kind", step.kind());
        row.put("when", step.when());
        for (int i = 0; i < step.charges().size(); i++) {
            Charge charge = step.charges().get(i);
            Form each = row.row("charges", i);
            each.put("lot", charge.lot());
            each.put("wof", charge.wof());
            each.put("weighed", charge.weighed());
        }
        row.put("liquor", step.liquor());
        row.put("liquorRatio", step.liquorRatio());
        row.put("temperature", step.temperature());
        row.put("ph", step.ph());
        row.put("duration", step.duration());
        row.put("vat", step.vat()).put("holes", String.join(", ", step.holes())).put("notes", step.notes());
        row.put("dips", step.dips().count());
        row.put("eachDip", step.dips().each());
        row.put("airing", step.dips().airing());
        for (int i = 0; i < step.dips().dips().size(); i++) {
            Dip dip = step.dips().dips().get(i);
            row.row("timed", i).put("in", dip.in()).put("out", dip.out());
        }
    }

    @Override
    public Clamping read(Form form, Clamping old) {
        ClampingId id = old != null ? old.id() : form.read("id", null, ClampingId::new);
        if (id == null) {
            form.problem("id", "A clamping needs a name, as in ‘C24-007’.");
        }
        List<BoardUse> boards = form.each("boards", ClampingForm::board);
        List<Fold> folds = form.each("folds", ClampingForm::fold);
        List<Cut> cuts = form.each("cuts", ClampingForm::cut);
        List<Step> steps = form.each("steps", ClampingForm::step);
        FoldScheme fold = form.build(
                "layersCounted",
                () -> new FoldScheme(folds, form.quantity("layersCounted", COUNT), form.text("foldNote")));
        ClampingId copiedFrom = form.read("copiedFrom", null, ClampingId::new);
        Clamping clamping = form.build(
                "title",
                () -> new Clamping(
                        id,
                        form.text("title"),
                        form.date("when"),
                        boards,
                        fold,
                        cuts,
                        steps,
                        form.quantity("clamped", HOUR),
                        form.text("pressure"),
                        form.text("water"),
                        form.text("lesson"),
                        form.text("notes"),
                        copiedFrom));
        return form.hasProblems() ? null : clamping;
    }

    private static BoardUse board(Form row) {
        String[] parts = row.text("use").split("/", 2);
        BoardId id = row.read("use", null, text -> new BoardId(parts[0]));
        return id == null ? null : new BoardUse(id, parts.length > 1 ? parts[1] : "");
    }

    private static Fold fold(Form row) {
        Integer panels = row.wholeNumber("panels");
        if (panels == null) {
            row.problem(
                    "panels",
                    "Say how many panels this fold makes, as in ‘4’; leave the whole row empty if you forgot.");
            return null;
        }
        return row.build(
                "panels",
                () -> new Fold(
                        row.choice("axis", Fold.Axis.values()), row.choice("style", Fold.Style.values()), panels));
    }

    private static Cut cut(Form row) {
        ClothId cloth = row.read("cloth", null, ClothId::new);
        if (cloth == null) {
            row.problem("cloth", "Choose the bolt this cut came from; add it under Materials if it is not there yet.");
        }
        return new Cut(
                cloth,
                row.quantity("length", CENTIMETRE),
                row.quantity("width", CENTIMETRE),
                row.quantity("weighed", GRAM),
                row.quantity("count", COUNT));
    }

    private static Step step(Form row) {
        List<Charge> charges = row.each("charges", each -> {
            LotId lot = each.read("lot", null, LotId::new);
            if (lot == null) {
                each.problem("lot", "Choose what went in; add it under Materials if it is not there yet.");
            }
            return new Charge(lot, each.quantity("wof", PERCENT), each.quantity("weighed", GRAM));
        });
        List<Dip> timed =
                row.each("timed", each -> each.build("out", () -> new Dip(time(each, "in"), time(each, "out"))));
        DipSeries dips = new DipSeries(
                row.quantity("dips", COUNT), row.quantity("eachDip", MINUTE), row.quantity("airing", MINUTE), timed);
        List<String> holes = Arrays.stream(row.text("holes").split("\\s*[,;]\\s*"))
                .filter(hole -> !hole.isBlank())
                .toList();
        StepKind kind = row.choice("kind", StepKind.values());
        if (kind == null) {
            row.problem("kind", "A step needs its kind, as in ‘bath’; what was typed in it is still here.");
            return null;
        }
        return new Step(
                kind,
                row.date("when"),
                charges,
                row.quantity("liquor", LITRE),
                row.quantity("liquorRatio", RATIO),
                row.quantity("temperature", CELSIUS),
                row.quantity("ph", PH),
                row.quantity("duration", MINUTE),
                row.text("vat"),
                holes,
                dips,
                row.text("notes"));
    }

    private static LocalDateTime time(Form row, String field) {
        return row.read(field, null, text -> {
            try {
                return LocalDateTime.parse(text);
            } catch (DateTimeParseException e) {
                throw new IllegalArgumentException(
                        "“%s” is not a day and time, as in ‘2024-03-05T10:15’.".formatted(text), e);
            }
        });
    }
}
