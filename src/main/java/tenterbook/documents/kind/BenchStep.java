package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tenterbook.documents.Block;
import tenterbook.facts.Denial;
import tenterbook.material.Lot;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.recipe.Cautions;
import tenterbook.recipe.Charge;
import tenterbook.recipe.RecipeFigures;
import tenterbook.recipe.Step;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** One step on a bench sheet, with room to write what is done this time. */
final class BenchStep {
    private static final int MOST_DIPS = 24;
    private static final int DIPS_WHERE_UNKNOWN = 8;

    private final DocumentFacts subject;
    private final Step step;
    private final RecipeFigures.StepFigures figures;

    BenchStep(DocumentFacts subject, Step step, RecipeFigures.StepFigures figures) {
        this.subject = subject;
        this.step = step;
        this.figures = figures;
    }

    void addTo(List<Block> blocks, int number) {
        blocks.add(new Block.Heading(2, number + "  " + heading()));
        BenchSheet.cautions(blocks, Cautions.of(step, lots()));
        List<Block.Fact> facts = new ArrayList<>();
        for (int i = 0; i < step.charges().size(); i++) {
            facts.add(charge(step.charges().get(i), figures.charges().get(i)));
        }
        add(facts, "document.fact.holes", String.join(", ", step.holes()));
        bath(facts);
        add(facts, "document.fact.dips", dips());
        add(facts, "document.fact.notes", step.notes());
        if (facts.isEmpty()) {
            facts.add(DocumentWords.fact("document.fact.particulars", ""));
        }
        blocks.add(new Block.Facts(facts));
        if (step.dips().recorded()) {
            step.dips().tally().disagreements().forEach(text -> blocks.add(DocumentWords.note(text.onPaper())));
            blocks.add(dipTable());
        }
        blocks.add(DocumentWords.blank("document.blank.done-today", 1));
    }

    private String heading() {
        String kind = Written.capital(step.kind().onPaper());
        return step.vat().isEmpty()
                ? kind
                : Message.of("document.bench.step-in", "step", kind, "vat", step.vat())
                        .onPaper();
    }

    /** With a known liquor all values are on one line; otherwise each is a fact of its own. */
    private void bath(List<Block.Fact> facts) {
        String liquor = DocumentWords.joined(
                ", ",
                figures.liquor().refused()
                        ? ""
                        : QuantityWords.value(figures.liquor().value()),
                step.liquorRatio().recorded()
                        ? Message.of("document.bench.ratio", "ratio", entered(step.liquorRatio()))
                                .onPaper()
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
                                    : Message.of("document.bench.ph", "ph", ph).onPaper(),
                            time));
        }
    }

    private List<Lot> lots() {
        return step.charges().stream()
                .map(Charge::lot)
                .filter(Objects::nonNull)
                .flatMap(id -> subject.facts().lot(id).stream())
                .distinct()
                .toList();
    }

    private Block.Fact charge(Charge charge, RecipeFigures.ChargeFigures computed) {
        Optional<Lot> lot = subject.facts().lot(charge.lot());
        String name = lot.map(Lot::title)
                .orElse(
                        charge.lot() == null
                                ? DocumentWords.words("document.bench.lot-not-recorded")
                                : charge.lot().value());
        return DocumentWords.named(
                Written.capital(name), DocumentWords.joined(", ", grams(charge, computed), wof(charge)));
    }

    private static String grams(Charge charge, RecipeFigures.ChargeFigures computed) {
        if (charge.weighed().recorded()) {
            return entered(charge.weighed());
        }
        if (computed.grams().refused()) {
            return "";
        }
        return Message.of(
                        "document.bench.computed",
                        "grams",
                        QuantityWords.value(computed.grams().value()))
                .onPaper();
    }

    private static String wof(Charge charge) {
        if (!charge.wof().recorded()) {
            return "";
        }
        return Message.of("document.bench.wof", "share", entered(charge.wof())).onPaper();
    }

    private String dips() {
        if (!step.dips().recorded()) {
            return "";
        }
        DipTally tally = step.dips().tally();
        String count = Denial.NO_NUMBER_OF_DIPS.unless(
                tally,
                () -> tally.timed()
                        ? Message.of("document.bench.timed", "dips", tally.text())
                                .onPaper()
                        : entered(step.dips().count()));
        return DocumentWords.joined(
                ", ",
                count,
                step.dips().each().recorded()
                        ? Message.of(
                                        "document.bench.each",
                                        "time",
                                        entered(step.dips().each()))
                                .onPaper()
                        : "",
                step.dips().airing().recorded()
                        ? Message.of(
                                        "document.bench.airing",
                                        "time",
                                        entered(step.dips().airing()))
                                .onPaper()
                        : "");
    }

    /** A row for each dip; where their number is not known, some rows without numbers. */
    private Block dipTable() {
        DipTally tally = step.dips().tally();
        boolean known = tally.known() && tally.high() >= 1 && (tally.high() <= MOST_DIPS || tally.timed());
        int rows = known ? (int) Math.min(MOST_DIPS, Math.ceil(tally.high())) : DIPS_WHERE_UNKNOWN;
        List<Block.TableRow> dips = new ArrayList<>();
        for (int i = 1; i <= rows; i++) {
            dips.add(new Block.TableRow(null, List.of(known ? Integer.toString(i) : " ", "", "", "")));
        }
        return new Block.Table(
                List.of(
                        DocumentWords.column("document.column.dip", 0.6),
                        DocumentWords.column("document.column.under", 1.4),
                        DocumentWords.column("document.column.up", 1.4),
                        DocumentWords.column("document.column.seen", 2.6)),
                dips);
    }

    private static void add(List<Block.Fact> facts, String key, String value) {
        if (!value.isBlank()) {
            facts.add(DocumentWords.fact(key, value));
        }
    }

    static String entered(Quantity quantity) {
        return quantity.recorded()
                ? QuantityWords.withAssumedUnit(quantity).onPaper().replace(" ", "\u00a0")
                : "";
    }
}
