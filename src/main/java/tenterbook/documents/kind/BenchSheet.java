package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.board.BoardPair;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.facts.Denial;
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
import tenterbook.words.Message;
import tenterbook.words.Written;

/** How a piece was made, set out so that it can be made again at the bench, with room to write what is done this time. */
final class BenchSheet {
    private static final int MOST_DIPS = 24;
    private static final int DIPS_WHERE_UNKNOWN = 8;

    private final DocumentFacts subject;

    private BenchSheet(DocumentFacts subject) {
        this.subject = subject;
    }

    static DocumentText of(DocumentFacts subject, DocumentSettings request) {
        BenchSheet sheet = new BenchSheet(subject);
        List<Block> blocks = new ArrayList<>();
        subject.photos().stream()
                .limit(2)
                .forEach(photo -> blocks.add(
                        new Block.Photograph(photo.photo(), Block.Extent.HALF, photo.caption(), "", List.of())));
        List<Clamping> clampings = subject.facts().clampings();
        Denial.NOTHING_TO_REPEAT.of(subject.facts()).ifPresent(text -> blocks.add(DocumentWords.missing(text)));
        for (int i = 0; i < clampings.size(); i++) {
            sheet.clamping(blocks, clampings.get(i), clampings.size() > 1);
        }
        if (!clampings.isEmpty()) {
            blocks.add(DocumentWords.note(Cautions.DEFERS.inEnglish()));
        }
        return new DocumentText(
                request.kind().code(),
                request.kind().template(),
                subject.number() + "  " + subject.title(),
                subject.number().value(),
                request.kind().toString(),
                List.of(new DocumentText.DocumentSection(subject.number(), blocks)));
    }

    private void clamping(List<Block> blocks, Clamping clamping, boolean several) {
        if (several) {
            blocks.add(new Block.Heading(
                    1,
                    DocumentWords.joined(
                            ", ",
                            Message.of("document.bench.clamping", "clamping", clamping.id())
                                    .inEnglish(),
                            clamping.title())));
        }
        RecipeFigures figures = RecipeFigures.of(clamping, subject.facts().cloths());
        blocks.add(DocumentWords.heading(2, "document.heading.fold-and-clamp"));
        cautions(blocks, Cautions.ofClamping());
        String layers = figures.layers().refused()
                ? clamping.fold().inWords().inEnglish().isEmpty()
                        ? ""
                        : DocumentWords.english("document.bench.layers-not-known")
                : Message.of(
                                "document.bench.layers",
                                "count",
                                QuantityWords.value(figures.layers().value()))
                        .inEnglish();
        List<Block.Fact> facts = new ArrayList<>();
        facts.add(DocumentWords.fact(
                "document.fact.boards",
                clamping.boards().stream().map(this::board).collect(Collectors.joining("; "))));
        facts.add(DocumentWords.fact(
                "document.fact.cloth", clamping.cuts().stream().map(this::cut).collect(Collectors.joining("; "))));
        facts.add(DocumentWords.fact(
                "document.fact.fold",
                DocumentWords.joined(
                        ". ",
                        clamping.fold().inWords().inEnglish(),
                        layers,
                        clamping.fold().note())));
        facts.add(DocumentWords.fact(
                "document.fact.clamp", DocumentWords.joined(", ", clamping.pressure(), entered(clamping.clamped()))));
        facts.add(DocumentWords.fact("document.fact.water", clamping.water()));
        if (!clamping.lesson().isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.lesson", clamping.lesson()));
        }
        blocks.add(new Block.Facts(facts));
        blocks.add(DocumentWords.blank("document.blank.today-cloth-dry", 1));
        Denial.NO_STEP.of(clamping).ifPresent(text -> blocks.add(DocumentWords.missing(text)));
        for (int i = 0; i < clamping.steps().size(); i++) {
            step(blocks, clamping.steps().get(i), figures.steps().get(i), i + 1);
        }
    }

    private String board(BoardUse use) {
        Optional<BoardPair> board = subject.facts().board(use.board());
        String title = subject.facts().boardTitle(use.board());
        Message words = use.state().isEmpty()
                ? Message.of("label.made.board-without-state", "board", title)
                : Message.of("label.made.board", "board", title, "state", use.state());
        boolean recut = board.isPresent()
                && !use.state().isEmpty()
                && !board.get().newest().name().equals(use.state());
        return (recut
                        ? Message.of(
                                "document.bench.recarved",
                                "board",
                                words,
                                "state",
                                board.get().newest().name())
                        : words)
                .inEnglish();
    }

    private String cut(Cut cut) {
        String name = Denial.NO_CLOTH_OF_CUT.unless(
                cut,
                () -> Optional.ofNullable(subject.facts().cloths().get(cut.cloth()))
                        .map(Cloth::title)
                        .orElseGet(() -> cut.cloth().value()));
        return DocumentWords.joined(
                ", ",
                name,
                cut.count().recorded()
                        ? Message.of("document.bench.cuts", "count", entered(cut.count()))
                                .inEnglish()
                        : "",
                DocumentWords.side(cut.length()) + " × " + DocumentWords.side(cut.width()),
                entered(cut.weighed()));
    }

    private void step(List<Block> blocks, Step step, RecipeFigures.StepFigures figures, int number) {
        blocks.add(new Block.Heading(2, number + "  " + heading(step)));
        cautions(blocks, Cautions.of(step, lots(step)));
        List<Block.Fact> facts = new ArrayList<>();
        for (int i = 0; i < step.charges().size(); i++) {
            facts.add(charge(step.charges().get(i), figures.charges().get(i)));
        }
        add(facts, "document.fact.holes", String.join(", ", step.holes()));
        bath(facts, step, figures);
        add(facts, "document.fact.dips", dips(step));
        add(facts, "document.fact.notes", step.notes());
        if (facts.isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.particulars", ""));
        }
        blocks.add(new Block.Facts(facts));
        if (step.dips().recorded()) {
            step.dips().tally().disagreements().forEach(text -> blocks.add(DocumentWords.note(text.inEnglish())));
            blocks.add(dipTable(step));
        }
        blocks.add(DocumentWords.blank("document.blank.done-today", 1));
    }

    private static String heading(Step step) {
        String kind = Written.capital(step.kind().toString());
        return step.vat().isEmpty()
                ? kind
                : Message.of("document.bench.step-in", "step", kind, "vat", step.vat())
                        .inEnglish();
    }

    /** With a known liquor all values are on one line; otherwise each is a fact of its own. */
    private static void bath(List<Block.Fact> facts, Step step, RecipeFigures.StepFigures figures) {
        String liquor = DocumentWords.joined(
                ", ",
                figures.liquor().refused()
                        ? ""
                        : QuantityWords.value(figures.liquor().value()),
                step.liquorRatio().recorded()
                        ? Message.of("document.bench.ratio", "ratio", entered(step.liquorRatio()))
                                .inEnglish()
                        : "");
        String ph = entered(step.ph()).replaceFirst("(?i)^ph\\s*", "");
        String heat = entered(step.temperature());
        String time = entered(step.duration());
        if (liquor.isEmpty()) {
            add(facts, "document.fact.heat", heat);
            add(facts, "document.fact.ph", ph);
            add(facts, "document.fact.time", time);
        } else {
            add(
                    facts,
                    "document.fact.liquor",
                    DocumentWords.joined(
                            ", ",
                            liquor,
                            heat,
                            ph.isEmpty()
                                    ? ""
                                    : Message.of("document.bench.ph", "ph", ph).inEnglish(),
                            time));
        }
    }

    private List<Lot> lots(Step step) {
        return step.charges().stream()
                .map(Charge::lot)
                .filter(Objects::nonNull)
                .flatMap(id -> subject.facts().lot(id).stream())
                .distinct()
                .toList();
    }

    private Block.Fact charge(Charge charge, RecipeFigures.ChargeFigures figures) {
        Optional<Lot> lot = subject.facts().lot(charge.lot());
        String name = lot.map(Lot::title)
                .orElse(
                        charge.lot() == null
                                ? DocumentWords.english("document.bench.lot-not-recorded")
                                : charge.lot().value());
        String grams = charge.weighed().recorded()
                ? entered(charge.weighed())
                : figures.grams().refused()
                        ? ""
                        : Message.of(
                                        "document.bench.computed",
                                        "grams",
                                        QuantityWords.value(figures.grams().value()))
                                .inEnglish();
        String wof = charge.wof().recorded()
                ? Message.of(
                                "document.bench.wof",
                                "share",
                                entered(charge.wof())
                                        + (entered(charge.wof()).contains("%")
                                                        || !charge.wof().known()
                                                ? ""
                                                : "\u00a0%"))
                        .inEnglish()
                : "";
        return DocumentWords.named(Written.capital(name), DocumentWords.joined(", ", grams, wof));
    }

    private static String dips(Step step) {
        if (!step.dips().recorded()) {
            return "";
        }
        DipTally tally = step.dips().tally();
        String count = Denial.NO_NUMBER_OF_DIPS.unless(
                tally,
                () -> tally.timed()
                        ? Message.of("document.bench.timed", "dips", tally.text())
                                .inEnglish()
                        : entered(step.dips().count()));
        return DocumentWords.joined(
                ", ",
                count,
                step.dips().each().recorded()
                        ? Message.of(
                                        "document.bench.each",
                                        "time",
                                        entered(step.dips().each()))
                                .inEnglish()
                        : "",
                step.dips().airing().recorded()
                        ? Message.of(
                                        "document.bench.airing",
                                        "time",
                                        entered(step.dips().airing()))
                                .inEnglish()
                        : "");
    }

    /** A row for each dip; where their number is not known, some rows without numbers. */
    private static Block dipTable(Step step) {
        DipTally tally = step.dips().tally();
        boolean known = tally.known() && tally.high() >= 1 && (tally.high() <= MOST_DIPS || tally.timed());
        int rows = known ? (int) Math.min(MOST_DIPS, Math.ceil(tally.high())) : DIPS_WHERE_UNKNOWN;
        List<Block.TableRow> dips = new ArrayList<>();
        for (int i = 1; i <= rows; i++) {
            dips.add(new Block.TableRow(null, List.of(known ? Integer.toString(i) : " ", "", "", "")));
        }
        return new Block.Table(
                List.of(
                        DocumentWords.column("document.column.dip", 0.6, false),
                        DocumentWords.column("document.column.under", 1.4, false),
                        DocumentWords.column("document.column.up", 1.4, false),
                        DocumentWords.column("document.column.seen", 2.6, false)),
                dips);
    }

    private static void add(List<Block.Fact> facts, String key, String value) {
        if (!value.isBlank()) {
            facts.add(DocumentWords.fact(key, value));
        }
    }

    /** Without the closing sentence, which is printed once at the end. */
    private static void cautions(List<Block> blocks, List<Written> cautions) {
        cautions.stream()
                .filter(text -> !text.equals(Cautions.DEFERS))
                .forEach(text -> blocks.add(DocumentWords.caution(text.inEnglish())));
    }

    private static String entered(Quantity quantity) {
        return quantity.recorded()
                ? QuantityWords.withAssumedUnit(quantity).inEnglish().replace(" ", "\u00a0")
                : "";
    }
}
