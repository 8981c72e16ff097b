package tenterbook.web.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;

/** Rows of repeated parts in the fields of a form: {@code steps.0.charges.1.wof} is a field of row 1 in row 0. */
final class FormRows {
    private final Map<String, List<String>> values;

    /** @param values by name; changed by {@link #rearrange} */
    FormRows(Map<String, List<String>> values) {
        this.values = values;
    }

    /** @param part its whole name, as in {@code steps.0.charges} */
    static NavigableSet<Integer> numbers(Map<String, List<String>> values, String part) {
        String start = part + ".";
        NavigableSet<Integer> numbers = new TreeSet<>();
        for (String key : values.keySet()) {
            if (key.startsWith(start)) {
                String number = key.substring(start.length()).split("\\.", 2)[0];
                if (number.matches("\\d{1,4}")) {
                    numbers.add(Integer.parseInt(number));
                }
            }
        }
        return numbers;
    }

    /**
     * Adds a row after the last, copies the last one, removes one, moves one up or fills fields in: 'add steps',
     * 'add steps kind=bath', 'copy states name=II', 'drop steps.2', 'up steps.0.charges.1', 'set steps.0 vat=A&holes=a, b'.
     *
     * @return prefix of the names in the row added; empty where none was
     */
    String rearrange(String order) {
        String[] words = order.strip().split("\\s+", 3);
        if (words.length < 2 || !words[1].matches("[A-Za-z]+(\\.([A-Za-z]+|\\d{1,4}))*")) {
            return "";
        }
        boolean row = words[1].matches(".*\\.\\d{1,4}");
        String given = words.length > 2 ? words[2] : "";
        if (words[0].equals("add") && !row) {
            return add(words[1], given);
        }
        if (words[0].equals("copy") && !row) {
            return copyLast(words[1], given);
        }
        if (words[0].equals("set")) {
            set(words[1] + ".", given);
        } else if (words[0].equals("drop") && row) {
            values.keySet().removeIf(name -> name.startsWith(words[1] + "."));
        } else if (words[0].equals("up") && row) {
            moveUp(words[1]);
        }
        return "";
    }

    private String add(String part, String given) {
        NavigableSet<Integer> numbers = numbers(values, part);
        String row = part + "." + (numbers.isEmpty() ? 0 : numbers.last() + 1) + ".";
        values.put(row + "there", new ArrayList<>(List.of("1")));
        set(row, given);
        return row;
    }

    /** An empty row where there is none to copy; {@code given} replaces what is copied. */
    private String copyLast(String part, String given) {
        NavigableSet<Integer> numbers = numbers(values, part);
        String made = add(part, "");
        if (!numbers.isEmpty()) {
            String last = part + "." + numbers.last() + ".";
            Map<String, List<String>> copied = new LinkedHashMap<>();
            values.forEach((name, list) -> {
                if (name.startsWith(last)) {
                    copied.put(made + name.substring(last.length()), new ArrayList<>(list));
                }
            });
            values.putAll(copied);
            set(made, given);
        }
        return made;
    }

    /** @param given fields and values, as in {@code kind=bath&vat=A} */
    private void set(String row, String given) {
        for (String each : given.split("&")) {
            String[] pair = each.split("=", 2);
            if (pair.length == 2 && pair[0].matches("([A-Za-z]+|\\d{1,4})(\\.([A-Za-z]+|\\d{1,4}))*")) {
                values.put(row + pair[0], new ArrayList<>(List.of(pair[1])));
            }
        }
    }

    private void moveUp(String row) {
        int dot = row.lastIndexOf('.');
        String part = row.substring(0, dot);
        Integer before = numbers(values, part).lower(Integer.parseInt(row.substring(dot + 1)));
        if (before == null) {
            return;
        }
        String lower = row + ".";
        String upper = part + "." + before + ".";
        Map<String, List<String>> swapped = new LinkedHashMap<>();
        values.forEach((name, list) -> swapped.put(swapped(name, upper, lower), list));
        values.clear();
        values.putAll(swapped);
    }

    private static String swapped(String name, String upper, String lower) {
        if (name.startsWith(lower)) {
            return upper + name.substring(lower.length());
        }
        return name.startsWith(upper) ? lower + name.substring(upper.length()) : name;
    }
}
