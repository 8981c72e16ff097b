package tenterbook.label.document.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.board.BoardPair;
import tenterbook.facts.Denial;
import tenterbook.label.document.Block;
import tenterbook.label.document.DocumentSettings;
import tenterbook.label.document.DocumentText;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Cautions;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;
import tenterbook.recipe.RecipeFigures;
import tenterbook.recipe.Step;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Written;

/** How a piece was made, set out so that it can be made again at the bench, with room to write what is done this time. */
final class BenchSheet {
    private static final int MOST_DIPS = 24;
    private static final int DIPS_WHERE_UNKNOWN = 8;

    private final Told told;

    private BenchSheet(Told told) {
        this.told = told;
    }

    static DocumentText of(Told told, DocumentSettings request) {
        BenchSheet sheet = new BenchSheet(told);
        List<Block> blocks = new ArrayList<>();
        told.photos().stream()
                .limit(2)
                .forEach(photo -> blocks.add(
                        new Block.Photograph(photo.photo(), Block.Extent.HALF, photo.caption(), "", List.of())));
        List<Clamping> clampings = told.facts().clampings();
        Denial.NOTHING_TO_REPEAT.of(told.facts()).ifPresent(text -> blocks.add(Say.missing(text)));
        for (int i = 0; i < clampings.size(); i++) {
            sheet.clamping(blocks, clampings.get(i), clampings.size() > 1);
        }
        if (!clampings.isEmpty()) {
            blocks.add(Say.note(Cautions.DEFERS.inEnglish()));
        }
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                told.number() + "  " + told.title(),
                told.number().value(),
                request.kind().toString(),
                List.of(new DocumentText.Part(told.number(), blocks)));
    }

    private void clamping(List<Block> blocks, Clamping clamping, boolean several) {
        if (several) {
            blocks.add(new Block.Heading(1, Say.joined(", ", "Clamping " + clamping.id(), clamping.title())));
        }
        RecipeFigures figures = RecipeFigures.of(clamping, told.facts().cloths());
        blocks.add(new Block.Heading(2, "Fold and clamp"));
        cautions(blocks, Cautions.ofClamping());
        String layers = figures.layers().refused()
                ? "Number of layers not known"
                : QuantityWords.value(figures.layers().value()) + "\u00a0layers";
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(Say.fact("Boards", clamping.boards().stream().map(this::board).collect(Collectors.joining("; "))));
        facts.add(Say.fact("Cloth", clamping.cuts().stream().map(this::cut).collect(Collectors.joining("; "))));
        facts.add(Say.fact(
                "Fold",
                Say.joined(
                        ". ",
                        clamping.fold().inWords().inEnglish(),
                        layers,
                        clamping.fold().note())));
        facts.add(Say.fact("Clamp", Say.joined(", ", clamping.pressure(), entered(clamping.clamped()))));
        facts.add(Say.fact("Water", clamping.water()));
        if (!clamping.lesson().isEmpty()) {
            facts.add(Say.fact("Lesson", clamping.lesson()));
        }
        blocks.add(new Block.Facts(facts));
        blocks.add(new Block.Blank("Today, cloth dry", 1));
        Denial.NO_STEP.of(clamping).ifPresent(text -> blocks.add(Say.missing(text)));
        for (int i = 0; i < clamping.steps().size(); i++) {
            step(blocks, clamping.steps().get(i), figures.steps().get(i), i + 1);
        }
    }

    private String board(BoardUse use) {
        Optional<BoardPair> board = told.facts().board(use.board());
        String title = told.facts().boardTitle(use.board());
        String state = use.state().isEmpty() ? ", state not recorded" : ", state\u00a0" + use.state();
        boolean recut = board.isPresent()
                && !use.state().isEmpty()
                && !board.get().newest().name().equals(use.state());
        return title
                + state
                + (recut
                        ? " (since recarved: now state\u00a0"
                                + board.get().newest().name() + ")"
                        : "");
    }

    private String cut(Cut cut) {
        String name = Denial.NO_CLOTH_OF_CUT.unless(
                cut,
                () -> Optional.ofNullable(told.facts().cloths().get(cut.cloth()))
                        .map(Cloth::title)
                        .orElseGet(() -> cut.cloth().value()));
        return Say.joined(
                ", ",
                name,
                cut.count().recorded() ? entered(cut.count()) + " cuts" : "",
                Say.side(cut.length()) + " × " + Say.side(cut.width()),
                entered(cut.weighed()));
    }

    private void step(List<Block> blocks, Step step, RecipeFigures.StepFigures figures, int number) {
        blocks.add(new Block.Heading(
                2,
                number + "  " + Say.capital(step.kind().toString())
                        + (step.vat().isEmpty() ? "" : " in " + step.vat())));
        cautions(blocks, Cautions.of(step, lots(step)));
        List<Block.Fact> facts = new ArrayList<>();
        for (int i = 0; i < step.charges().size(); i++) {
            facts.add(charge(step.charges().get(i), figures.charges().get(i)));
        }
        add(facts, "Holes", String.join(", ", step.holes()));
        bath(facts, step, figures);
        add(facts, "Dips", dips(step));
        add(facts, "Notes", step.notes());
        if (facts.isEmpty()) {
            facts.add(Say.fact("Particulars", ""));
        }
        blocks.add(new Block.Facts(facts));
        if (step.dips().recorded()) {
            step.dips().tally().disagreements().forEach(text -> blocks.add(Say.note(text.inEnglish())));
            blocks.add(dipTable(step));
        }
        blocks.add(new Block.Blank("Done today", 1));
    }

    /** What is read off in one glance stands on one line; what stands alone has its own name. */
    private static void bath(List<Block.Fact> facts, Step step, RecipeFigures.StepFigures figures) {
        String liquor = Say.joined(
                ", ",
                figures.liquor().refused()
                        ? ""
                        : QuantityWords.value(figures.liquor().value()),
                step.liquorRatio().recorded() ? "ratio\u00a0" + entered(step.liquorRatio()) : "");
        String ph = entered(step.ph()).replaceFirst("(?i)^ph\\s*", "");
        String heat = entered(step.temperature());
        String time = entered(step.duration());
        if (liquor.isEmpty()) {
            add(facts, "Heat", heat);
            add(facts, "pH", ph);
            add(facts, "Time", time);
        } else {
            add(facts, "Liquor", Say.joined(", ", liquor, heat, ph.isEmpty() ? "" : "pH\u00a0" + ph, time));
        }
    }

    private List<Lot> lots(Step step) {
        return step.charges().stream()
                .map(Charge::lot)
                .filter(Objects::nonNull)
                .flatMap(id -> told.facts().lot(id).stream())
                .distinct()
                .toList();
    }

    private Block.Fact charge(Charge charge, RecipeFigures.ChargeFigures figures) {
        Optional<Lot> lot = told.facts().lot(charge.lot());
        String name = lot.map(Lot::title)
                .orElse(charge.lot() == null ? "lot not recorded" : charge.lot().value());
        String grams = charge.weighed().recorded()
                ? entered(charge.weighed())
                : figures.grams().refused()
                        ? ""
                        : QuantityWords.value(figures.grams().value()) + " (computed)";
        String wof = charge.wof().recorded()
                ? entered(charge.wof())
                        + (entered(charge.wof()).contains("%") || !charge.wof().known() ? "" : "\u00a0%")
                        + " of the weight of fibre"
                : "";
        return Say.fact(Say.capital(name), Say.joined(", ", grams, wof));
    }

    private static String dips(Step step) {
        if (!step.dips().recorded()) {
            return "";
        }
        DipTally tally = step.dips().tally();
        String count = Denial.NO_NUMBER_OF_DIPS.unless(
                tally,
                () -> tally.timed()
                        ? tally.text() + " timed"
                        : entered(step.dips().count()));
        return Say.joined(
                ", ",
                count,
                step.dips().each().recorded() ? "each " + entered(step.dips().each()) : "",
                step.dips().airing().recorded()
                        ? "airing " + entered(step.dips().airing())
                        : "");
    }

    /** A row for each dip; where their number is not known, some rows without numbers. */
    private static Block dipTable(Step step) {
        DipTally tally = step.dips().tally();
        boolean known = tally.known() && tally.high() >= 1 && (tally.high() <= MOST_DIPS || tally.timed());
        int rows = known ? (int) Math.min(MOST_DIPS, Math.ceil(tally.high())) : DIPS_WHERE_UNKNOWN;
        List<Block.Row> dips = new ArrayList<>();
        for (int i = 1; i <= rows; i++) {
            dips.add(new Block.Row(null, List.of(known ? Integer.toString(i) : " ", "", "", "")));
        }
        return new Block.Table(
                List.of(
                        new Block.Column("Dip", 0.6, false),
                        new Block.Column("Under", 1.4, false),
                        new Block.Column("Up", 1.4, false),
                        new Block.Column("Seen", 2.6, false)),
                dips);
    }

    private static void add(List<Block.Fact> facts, String label, String value) {
        if (!value.isBlank()) {
            facts.add(Say.fact(label, value));
        }
    }

    /** The closing words stand once, at the end. */
    private static void cautions(List<Block> blocks, List<Written> cautions) {
        cautions.stream()
                .filter(text -> !text.equals(Cautions.DEFERS))
                .forEach(text -> blocks.add(Say.caution(text.inEnglish())));
    }

    private static String entered(Quantity quantity) {
        return quantity.recorded() ? QuantityWords.entered(quantity).replace(" ", "\u00a0") : "";
    }
}
