package tenterbook.web.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * One field that differs between two forms of a record.
 *
 * @param field its name in words, as in 'step 2, temperature'
 * @param before text in the first; empty where it had none
 * @param after text in the second; empty where it has none
 */
public record Difference(String field, String before, String after) {
    private static final Set<String> NOT_OF_THE_RECORD = Set.of("version", "order", "photosShown", "draft", "then");

    /** What differs, in the order of the form. */
    public static List<Difference> between(Form first, Form second) {
        Map<String, String> before = first.entries();
        Map<String, String> after = second.entries();
        Set<String> names = new TreeSet<>(((java.util.TreeMap<String, String>) before).comparator());
        names.addAll(before.keySet());
        names.addAll(after.keySet());
        List<Difference> list = new ArrayList<>();
        for (String name : names) {
            String was = before.getOrDefault(name, "");
            String is = after.getOrDefault(name, "");
            if (!NOT_OF_THE_RECORD.contains(name) && !was.equals(is)) {
                list.add(new Difference(inWords(name), was, is));
            }
        }
        return list;
    }

    /** {@code steps.1.liquorRatio} becomes 'step 2, liquor ratio'. */
    static String inWords(String name) {
        List<String> words = new ArrayList<>();
        String[] parts = name.split("\\.");
        for (int i = 0; i < parts.length; i++) {
            String plain = parts[i].replaceAll("([a-z])([A-Z])", "$1 $2").toLowerCase(java.util.Locale.ROOT);
            if (i + 1 < parts.length && parts[i + 1].matches("\\d+")) {
                plain = plain.replaceAll("s$", "") + " " + (Integer.parseInt(parts[i + 1]) + 1);
                i++;
            } else if (plain.equals("basis")) {
                plain = "how known";
            } else if (plain.equals("kind") || plain.equals("use")) {
                plain = "";
            }
            if (!plain.isEmpty()) {
                words.add(plain);
            }
        }
        return String.join(", ", words);
    }
}
