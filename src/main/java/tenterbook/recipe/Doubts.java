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
    private static final double RATIO_LOW = 20;
    private static final double RATIO_HIGH = 40;
    /** 'about 11; too high for wool' (common practice). */
    private static final double PH_TOO_HIGH_FOR_WOOL = 11;

    private static final Pattern WOOL =
            Table.words("wool|merino|lambswool|challis|alpaca|mohair|cashmere|angora|camel|yak");
    private static final Pattern SILK = Table.words("silk|tussah|habotai");
    private static final Pattern CELLULOSE =
            Table.words("cotton|linen|flax|hemp|ramie|nettle|jute|viscose|rayon|lyocell|modal|cupro|bamboo");
    private static final Pattern TARTAR = Table.words("cream of tartar|tartar");

    private static final List<Usual> USUAL =
            Table.rows("handbook-numbers.csv").stream().map(Usual::of).toList();

    private Doubts() {}

    private record Usual(
            String item, Pattern words, String fibre, double low, double high, String note, String source) {
        static Usual of(CSVRecord row) {
            return new Usual(
                    row.get("item"),
                    Table.words(row.get("words")),
                    row.get("fibre"),
                    Double.parseDouble(row.get("low")),
                    Double.parseDouble(row.get("high")),
                    row.get("note"),
                    row.get("source"));
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
                case "protein" -> (wool || silk) && !cellulose;
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
        for (int i = 0; i < clamping.steps().size(); i++) {
            Step step = clamping.steps().get(i);
            for (RecipeFigures.ChargeFigures charge : figures.steps().get(i).charges()) {
                Lot lot = charge.lot() == null ? null : lots.get(charge.lot());
                if (lot != null) {
                    charge(doubts, lot, charge.wof(), fibres);
                }
            }
            bath(doubts, step, fibres);
        }
        return List.copyOf(doubts);
    }

    private static void charge(List<Written> doubts, Lot lot, Figure wof, Fibres fibres) {
        String name = Table.plain(lot.name());
        if (fibres.are("cellulose") && TARTAR.matcher(name).find()) {
            doubts.add(Message.of("recipe.doubt.tartar"));
        }
        for (Usual usual : USUAL) {
            if (!usual.words.matcher(name).find() || !fibres.are(usual.fibre)) {
                continue;
            }
            if (outside(wof.value(), Unit.PERCENT, usual.low, usual.high)) {
                doubts.add(Message.of(
                        "recipe.doubt.amount",
                        "lot",
                        lot.title(),
                        "amount",
                        QuantityWords.understood(wof.value()),
                        "low",
                        NumberWords.rounded(usual.low),
                        "high",
                        NumberWords.rounded(usual.high),
                        "noted",
                        !usual.note.isEmpty(),
                        "note",
                        usual.note,
                        "source",
                        usual.source));
            }
        }
    }

    private static void bath(List<Written> doubts, Step step, Fibres fibres) {
        if (outside(step.liquorRatio(), Unit.RATIO, RATIO_LOW, RATIO_HIGH)) {
            doubts.add(Message.of("recipe.doubt.ratio", "ratio", QuantityWords.understood(step.liquorRatio())));
        }
        Quantity ph = step.ph();
        if (fibres.wool && ph.known() && ph.unit() == Unit.PH && ph.low() != null && ph.low() >= PH_TOO_HIGH_FOR_WOOL) {
            doubts.add(Message.of("recipe.doubt.wool", "ph", QuantityWords.understood(ph)));
        }
    }

    private static boolean outside(Quantity value, Unit unit, double low, double high) {
        return value.known()
                && value.unit() == unit
                && (value.low() != null && value.low() > high || value.high() != null && value.high() < low);
    }
}
