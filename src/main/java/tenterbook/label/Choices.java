package tenterbook.label;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.LabelSheet;
import tenterbook.label.rule.Market;

/** A label request as an issued paper keeps it, every choice by name, and back. */
final class Choices {
    private Choices() {}

    static Map<String, String> of(LabelRequest request) {
        Map<String, String> kept = new LinkedHashMap<>();
        kept.put("widthMm", text(request.widthMm()));
        kept.put("heightMm", text(request.heightMm()));
        kept.put("priceShown", Boolean.toString(request.priceShown()));
        kept.put("blackOnly", Boolean.toString(request.blackOnly()));
        kept.put("fullContent", Boolean.toString(request.fullContent()));
        kept.put("careSymbols", Boolean.toString(request.careSymbols()));
        kept.put("arrangement", Issue.word(request.arrangement()));
        Laying laying = request.laying();
        kept.put("from", Integer.toString(laying.from()));
        kept.put("cutMarks", Boolean.toString(laying.cutMarks()));
        kept.put("holeMark", Boolean.toString(laying.holeMark()));
        kept.put("bleedMm", text(laying.bleedMm()));
        if (request.sheet() == SheetSize.ROLL) {
            kept.put("rollMm", text(laying.rollMm()));
        }
        if (request.sheet() == SheetSize.OWN) {
            sheet(laying.own(), kept);
        }
        return kept;
    }

    private static String text(double number) {
        return Double.toString(number);
    }

    /** The whole sheet, since the one of that name may be measured again later. */
    private static void sheet(LabelSheet own, Map<String, String> kept) {
        kept.put("own.name", own.name());
        kept.put("own.widthMm", text(own.widthMm()));
        kept.put("own.heightMm", text(own.heightMm()));
        kept.put("own.columns", Integer.toString(own.columns()));
        kept.put("own.rows", Integer.toString(own.rows()));
        kept.put("own.labelWidthMm", text(own.labelWidthMm()));
        kept.put("own.labelHeightMm", text(own.labelHeightMm()));
        kept.put("own.leftMm", text(own.leftMm()));
        kept.put("own.topMm", text(own.topMm()));
        kept.put("own.columnGapMm", text(own.columnGapMm()));
        kept.put("own.rowGapMm", text(own.rowGapMm()));
        kept.put("own.shiftRightMm", text(own.shiftRightMm()));
        kept.put("own.shiftDownMm", text(own.shiftDownMm()));
        kept.put("own.acrossPerMille", text(own.acrossPerMille()));
        kept.put("own.downPerMille", text(own.downPerMille()));
    }

    /** Empty where the paper is no label, is of the first form, or asks for what this program no longer makes. */
    static Optional<LabelRequest> request(IssuedPaper paper) {
        if (!paper.canBeSetAgain()) {
            return Optional.empty();
        }
        Optional<LabelKind> kind = named(LabelKind.values(), paper.kind());
        Optional<Market> market = named(Market.values(), paper.market());
        Optional<SheetSize> sheet = named(SheetSize.values(), paper.sheet());
        if (kind.isEmpty() || market.isEmpty() || sheet.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(read(kind.get(), market.get(), sheet.get(), paper));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static LabelRequest read(LabelKind kind, Market market, SheetSize sheet, IssuedPaper paper) {
        Map<String, String> kept = paper.setting();
        Laying laying = new Laying(
                sheet == SheetSize.OWN ? sheet(kept) : null,
                number(kept, "rollMm", Laying.USUAL.rollMm()),
                (int) number(kept, "from", 1),
                Math.max(1, paper.copies()),
                flag(kept, "cutMarks", true),
                flag(kept, "holeMark", true),
                number(kept, "bleedMm", 0));
        return new LabelRequest(
                kind,
                market,
                sheet,
                number(kept, "widthMm", kind.widthMm()),
                number(kept, "heightMm", kind.heightMm()),
                flag(kept, "priceShown", false),
                flag(kept, "blackOnly", false),
                flag(kept, "fullContent", true),
                flag(kept, "careSymbols", false),
                named(Arrangement.values(), kept.getOrDefault("arrangement", ""))
                        .orElse(null),
                laying);
    }

    private static LabelSheet sheet(Map<String, String> kept) {
        return new LabelSheet(
                kept.getOrDefault("own.name", ""),
                number(kept, "own.widthMm", 0),
                number(kept, "own.heightMm", 0),
                (int) number(kept, "own.columns", 0),
                (int) number(kept, "own.rows", 0),
                number(kept, "own.labelWidthMm", 0),
                number(kept, "own.labelHeightMm", 0),
                number(kept, "own.leftMm", 0),
                number(kept, "own.topMm", 0),
                number(kept, "own.columnGapMm", 0),
                number(kept, "own.rowGapMm", 0),
                number(kept, "own.shiftRightMm", 0),
                number(kept, "own.shiftDownMm", 0),
                number(kept, "own.acrossPerMille", 0),
                number(kept, "own.downPerMille", 0));
    }

    private static double number(Map<String, String> kept, String name, double absent) {
        return kept.containsKey(name) ? Double.parseDouble(kept.get(name)) : absent;
    }

    private static boolean flag(Map<String, String> kept, String name, boolean absent) {
        return kept.containsKey(name) ? Boolean.parseBoolean(kept.get(name)) : absent;
    }

    static <E extends Enum<E>> Optional<E> named(E[] all, String word) {
        return Stream.of(all).filter(each -> Issue.word(each).equals(word)).findFirst();
    }
}
