package tenterbook.search.query;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers of pieces as people shorten them: 'V24-7', '24-007' and '7' all mean V24-007. */
public final class PlainNumber {
    private static final Pattern RUN = Pattern.compile("\\p{L}+|\\d+");

    private PlainNumber() {}

    /** Letters and digits apart, without leading zeros: {@code v 24 7}. Empty where there are none. */
    public static String of(String typed) {
        return String.join(" ", runs(typed));
    }

    /** What a number may be shortened to: itself, and whatever is left when it loses runs from its front. */
    public static List<String> shortened(String number) {
        List<String> runs = runs(number);
        List<String> all = new ArrayList<>();
        for (int from = 0; from < runs.size(); from++) {
            if (Character.isDigit(runs.get(runs.size() - 1).charAt(0))) {
                all.add(String.join(" ", runs.subList(from, runs.size())));
            }
        }
        return all;
    }

    private static List<String> runs(String text) {
        List<String> runs = new ArrayList<>();
        Matcher run = RUN.matcher(FacetValues.folded(text));
        while (run.find()) {
            runs.add(run.group().replaceFirst("^0+(?=\\d)", ""));
        }
        return runs;
    }
}
