package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.measure.Basis;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Values of a clamping that are unlikely by the handbooks. Never a refusal: a maker may mean them. An unknown value raises no
 * doubt, and a range raises one only where all of it lies outside.
 */
public final class Doubts {
    private static final Pattern WOOL =
            Table.words("wool|merino|lambswool|challis|alpaca|mohair|cashmere|angora|camel|yak");
    private static final Pattern SILK = Table.words("silk|tussah|habotai");
    private static final Pattern CELLULOSE =
            Table.words("cotton|linen|flax|hemp|ramie|nettle|jute|viscose|rayon|lyocell|modal|cupro|bamboo");
    private static final Pattern TARTAR = Table.words("cream of tartar|tartar");

    private static final List<CSVRecord> ROWS = Table.rows("usual-numbers.csv");
    private static final Named<Usual> CHARGES = new Named<>(
            ROWS.stream().filter(row -> row.get("of").equals("charge")).toList(), Usual::of);
    private static final List<Usual> BATHS = ROWS.stream()
            .filter(row -> !row.get("of").equals("charge"))
            .map(Usual::of)
            .toList();

    private Doubts() {}

    /** A row of the table; low and high are NaN where no numbers are known, which leaves nothing outside. */
    private record Usual(String of, String fibre, double low, double high, String note, String source) {
        static Usual of(CSVRecord row) {
            String source = row.get("source");
            return new Usual(
                    row.get("of"),
                    row.get("fibre"),
                    number(row.get("low")),
                    number(row.get("high")),
                    row.get("note"),
                    row.get("passage").isEmpty() ? source + ", from memory" : source);
        }

        private static double number(String text) {
            return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
        }

        /** Whether all of a value lies outside; an unknown one, or one of another unit, does not. */
        boolean leavesOut(Quantity value, Unit unit) {
            if (!value.known() || value.unit().dimension() != unit.dimension()) {
                return false;
            }
            Quantity same = value.in(unit);
            return same.low() != null && same.low() > high || same.high() != null && same.high() < low;
        }

        Message doubt(String lot, Quantity value) {
            Written usual = NumberWords.range(NumberWords.plain(low), NumberWords.plain(high));
            return Message.of(
                    "recipe.doubt.unusual",
                    "of",
                    of,
                    "lot",
                    lot,
                    "value",
                    QuantityWords.understood(value),
                    "usual",
                    of.equals("charge") ? NumberWords.percent(usual) : usual,
                    "noted",
                    !note.isEmpty(),
                    "note",
                    note,
                    "source",
                    source);
        }
    }

    /** The recorded kinds of fibre of the cuts. */
    private record Fibres(boolean wool, boolean silk, boolean cellulose) {
        static Fibres of(Clamping clamping, Map<ClothId, Cloth> cloths) {
            StringBuilder names = new StringBuilder();
            for (Cut cut : clamping.cuts()) {
                Cloth cloth = cut.cloth() == null ? null : cloths.get(cut.cloth());
                if (cloth != null) {
                    cloth.content().forEach(share -> names.append(share.fibre()).append(' '));
                }
            }
            String plain = Table.plain(names.toString());
            return new Fibres(
                    WOOL.matcher(plain).find(),
                    SILK.matcher(plain).find(),
                    CELLULOSE.matcher(plain).find());
        }

        boolean are(String which) {
            return switch (which) {
                case "any" -> true;
                case "wool" -> wool && !silk && !cellulose;
                case "silk" -> silk && !wool && !cellulose;
                case "not wool" -> !wool;
                case "protein" -> wool || silk;
                case "cellulose" -> cellulose && !wool && !silk;
                default -> throw new IllegalStateException("No such kind of fibre: " + which);
            };
        }
    }

    /**
     * @param cloths the bolts that the cuts name
     * @param lots the lots that the charges name
     * @return a sentence for each doubt, with its source in brackets at the end
     */
    public static List<Written> of(Clamping clamping, Map<ClothId, Cloth> cloths, Map<LotId, Lot> lots) {
        RecipeFigures figures = RecipeFigures.of(clamping, cloths);
        Fibres fibres = Fibres.of(clamping, cloths);
        List<Written> doubts = new ArrayList<>();
        for (Cut cut : clamping.cuts()) {
            outside(doubts, "cut", fibres, cut.length(), Unit.CENTIMETRE);
            outside(doubts, "cut", fibres, cut.width(), Unit.CENTIMETRE);
        }
        for (int i = 0; i < clamping.steps().size(); i++) {
            Step step = clamping.steps().get(i);
            for (RecipeFigures.ChargeFigures charge : figures.steps().get(i).charges()) {
                Lot lot = charge.lot() == null ? null : lots.get(charge.lot());
                if (lot != null) {
                    charge(doubts, lot, charge.wof(), fibres);
                }
            }
            outside(doubts, "ratio", fibres, ratio(step, figures.clothMass().value()), Unit.RATIO);
            outside(doubts, "ph", fibres, step.ph(), Unit.PH);
            outside(doubts, "temperature", fibres, step.temperature(), Unit.CELSIUS);
        }
        return List.copyOf(doubts);
    }

    private static void charge(List<Written> doubts, Lot lot, Figure wof, Fibres fibres) {
        if (fibres.are("cellulose") && TARTAR.matcher(Table.plain(lot.name())).find()) {
            doubts.add(Message.of("recipe.doubt.tartar"));
        }
        CHARGES.in(lot.name()).stream()
                .filter(usual -> fibres.are(usual.fibre) && usual.leavesOut(wof.value(), Unit.PERCENT))
                .map(usual -> usual.doubt(lot.title(), wof.value()))
                .forEach(doubts::add);
    }

    private static void outside(List<Written> doubts, String of, Fibres fibres, Quantity value, Unit unit) {
        BATHS.stream()
                .filter(usual -> usual.of.equals(of) && fibres.are(usual.fibre) && usual.leavesOut(value, unit))
                .map(usual -> usual.doubt("", value))
                .forEach(doubts::add);
    }

    /** As recorded, else of a bath's liquor and the mass of the cloth; a vat for many pieces has none. */
    private static Quantity ratio(Step step, Quantity cloth) {
        boolean bath = step.kind() == StepKind.MORDANTING || step.kind() == StepKind.BATH;
        Quantity liquor = step.liquor();
        if (step.liquorRatio().known() || !bath || !cloth.known() || !liquor.known()) {
            return step.liquorRatio();
        }
        if (liquor.unit().dimension() != Unit.LITRE.dimension()) {
            return Quantity.UNRECORDED;
        }
        Quantity litres = liquor.in(Unit.LITRE);
        Quantity kilograms = cloth.in(Unit.KILOGRAM);
        if (litres.low() == null
                || litres.high() == null
                || kilograms.low() == null
                || kilograms.low() <= 0
                || kilograms.high() == null) {
            return Quantity.UNRECORDED;
        }
        return Quantity.between(
                litres.low() / kilograms.high(), litres.high() / kilograms.low(), Unit.RATIO, Basis.COMPUTED);
    }
}
