package tenterbook.exchange.sheet;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.exchange.sheet.ColumnPlan.Chosen;
import tenterbook.exchange.sheet.ColumnPlan.DayOrder;
import tenterbook.exchange.sheet.file.SheetRow;

/** The texts of a row by field, as they would be typed into a form. Rows are given in order, since an empty cell may mean the one above. */
final class RowTexts {
    private static final Pattern SLASHED = Pattern.compile("(\\d{1,2})/(\\d{1,2})/(\\d{4})");

    /** A number or two, with words that have nothing to do with units. */
    private static final Pattern BARE =
            Pattern.compile("(?iu)(?:~|≈|about |circa |ca\\.? ?|approx\\.? |cerca de )?[\\d.,/ ½¼¾⅓⅔⅛⅜⅝⅞]+(?:ish)?"
                    + "(?:\\s*(?:-|–|to|or|a|ou)\\s*[\\d.,/ ½¼¾⅓⅔⅛⅜⅝⅞]+)?");

    private final ColumnPlan plan;
    private final Map<Integer, String> above = new HashMap<>();

    RowTexts(ColumnPlan plan) {
        this.plan = plan;
    }

    /** Empty cells are left out. */
    Map<String, String> of(SheetRow row) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Chosen chosen : plan.columns()) {
            String text = row.cell(chosen.at()).strip();
            if (chosen.sameAsAbove()) {
                text = text.isEmpty() ? above.getOrDefault(chosen.at(), "") : text;
                above.put(chosen.at(), text);
            }
            if (!text.isEmpty()) {
                texts.put(chosen.path(), typed(chosen, text));
            }
        }
        return texts;
    }

    private static String typed(Chosen chosen, String text) {
        Matcher slashed = SLASHED.matcher(text);
        if (chosen.order() != DayOrder.NOT_SAID && slashed.matches()) {
            boolean dayFirst = chosen.order() == DayOrder.DAY_FIRST;
            return "%s-%s-%s"
                    .formatted(
                            slashed.group(3),
                            two(slashed.group(dayFirst ? 2 : 1)),
                            two(slashed.group(dayFirst ? 1 : 2)));
        }
        return !chosen.unit().isEmpty() && BARE.matcher(text).matches() ? text + " " + chosen.unit() : text;
    }

    private static String two(String digits) {
        return digits.length() == 1 ? "0" + digits : digits;
    }
}
