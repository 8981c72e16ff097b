package tenterbook.web.form;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.Function;
import tenterbook.web.page.Address;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The fields of one form as text, and the problems found in reading them.
 *
 * <p>Names are dotted, with numbers for rows: {@code steps.0.charges.1.wof}. Reading a field that cannot be understood
 * notes a problem and gives 'not recorded', so that all problems are found at once and everything typed is shown again.
 * Not thread-safe.
 */
public final class Form {
    private final Map<String, List<String>> values;
    private final Map<String, String> problems;
    private final String prefix;
    private String added = "";

    private Form(Map<String, List<String>> values, Map<String, String> problems, String prefix) {
        this.values = values;
        this.problems = problems;
        this.prefix = prefix;
    }

    public static Form empty() {
        return new Form(new LinkedHashMap<>(), new LinkedHashMap<>(), "");
    }

    public static Form of(Map<String, List<String>> parameters) {
        Form form = empty();
        parameters.forEach((name, list) -> form.values.put(name, new ArrayList<>(list)));
        return form;
    }

    /** Reads what {@link #encoded} wrote. */
    public static Form decoded(String body) {
        Form form = empty();
        for (String pair : body.split("&")) {
            if (!pair.isEmpty()) {
                String[] sides = pair.split("=", 2);
                form.values
                        .computeIfAbsent(decode(sides[0]), name -> new ArrayList<>())
                        .add(sides.length > 1 ? decode(sides[1]) : "");
            }
        }
        return form;
    }

    private static String decode(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    /** All fields in the form of an HTML form post. */
    public String encoded() {
        return Address.query(values);
    }

    /** Prefix of the names in the row that {@link #rearrange} added; empty where it added none. */
    public String added() {
        return added;
    }

    /** All that was typed except the version and the field {@code key}, which names the record. */
    public List<Map.Entry<String, String>> typed(String key) {
        return values.entrySet().stream()
                .filter(entry -> !entry.getKey().equals(key) && !entry.getKey().equals("version"))
                .flatMap(entry -> entry.getValue().stream().map(value -> Map.entry(entry.getKey(), value)))
                .toList();
    }

    public String name(String field) {
        return prefix + field;
    }

    /** An HTML id for a field, unique on the page. */
    public String id(String field) {
        return "f-" + name(field).replace('.', '-');
    }

    public String value(String field) {
        List<String> list = values.get(name(field));
        return list == null || list.isEmpty() ? "" : list.get(0);
    }

    public boolean has(String field) {
        return !value(field).isBlank();
    }

    /** Why a field could not be read; empty where it could. */
    public String problem(String field) {
        return problems.getOrDefault(name(field), "");
    }

    public boolean hasProblems() {
        return !problems.isEmpty();
    }

    /** Every problem, by the HTML id of its field. */
    public Map<String, String> problemsById() {
        Map<String, String> byId = new LinkedHashMap<>();
        problems.forEach((name, problem) -> byId.put("f-" + name.replace('.', '-'), problem));
        return byId;
    }

    public boolean checked(String field) {
        return !value(field).isEmpty();
    }

    /** The rows of a repeated part, in order; their numbers may have gaps. */
    public List<Form> rows(String part) {
        return rowNumbers(part).stream().map(number -> row(part, number)).toList();
    }

    private NavigableSet<Integer> rowNumbers(String part) {
        String start = name(part) + ".";
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

    public Form row(String part, int index) {
        return new Form(values, problems, name(part) + "." + index + ".");
    }

    /** The fields of a part inside this form. */
    public Form inside(String part) {
        return new Form(values, problems, name(part) + ".");
    }

    /** Where this row is in the form, as in {@code steps.0}. */
    public String at() {
        return prefix.isEmpty() ? "" : prefix.substring(0, prefix.length() - 1);
    }

    /** Whether nothing at all was entered or chosen in this row. */
    public boolean blank() {
        return values.entrySet().stream()
                .filter(entry -> entry.getKey().startsWith(prefix))
                .filter(entry -> !entry.getKey().endsWith(".there"))
                .allMatch(entry -> entry.getValue().stream().allMatch(String::isBlank));
    }

    public Form put(String field, Object value) {
        String text = value == null ? "" : value.toString();
        values.put(name(field), new ArrayList<>(List.of(text)));
        return this;
    }

    /** Does what a button for rows asks in the field 'order'; false where none was pressed. */
    public boolean rearranged() {
        String order = text("order");
        put("order", "");
        rearrange(order);
        return !order.isEmpty();
    }

    /** Adds an empty row after the last, takes one away or moves it up: 'add steps', 'drop steps.2', 'up steps.0.charges.1'. */
    public void rearrange(String order) {
        String[] words = order.strip().split("\\s+", 2);
        if (words.length < 2 || !words[1].matches("[A-Za-z]+(\\.([A-Za-z]+|\\d{1,4}))*")) {
            return;
        }
        boolean row = words[1].matches(".*\\.\\d{1,4}");
        if (words[0].equals("add") && !row) {
            NavigableSet<Integer> numbers = rowNumbers(words[1]);
            int next = numbers.isEmpty() ? 0 : numbers.last() + 1;
            put(words[1] + "." + next + ".there", "1");
            added = name(words[1] + "." + next + ".");
        } else if (words[0].equals("drop") && row) {
            values.keySet().removeIf(name -> name.startsWith(words[1] + "."));
        } else if (words[0].equals("up") && row) {
            moveUp(words[1]);
        }
    }

    private void moveUp(String row) {
        int dot = row.lastIndexOf('.');
        String part = row.substring(0, dot);
        Integer before = rowNumbers(part).lower(Integer.parseInt(row.substring(dot + 1)));
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

    public void problem(String field, String sentence) {
        problems.putIfAbsent(name(field), sentence);
    }

    public String text(String field) {
        return value(field).strip();
    }

    /** One of {@code choices} by its word; null where none is chosen. */
    public <E extends Enum<E>> E choice(String field, E[] choices) {
        return read(field, null, text -> {
            for (E choice : choices) {
                if (choice.toString().equals(text)) {
                    return choice;
                }
            }
            throw Refusal.of(
                    "form.none-of-the-choices",
                    "found",
                    text,
                    "choices",
                    List.of(choices).toString());
        });
    }

    /** A field as {@code reader} reads it, for example a constructor; an empty one gives {@code blank}. */
    public <T> T read(String field, T blank, Function<String, T> reader) {
        String text = text(field);
        if (text.isEmpty()) {
            return blank;
        }
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException e) {
            problem(field, Words.sentence(e));
            return blank;
        }
    }

    /** The version that the form was filled from; {@code absent} where it names none. */
    public int version(int absent) {
        String typed = value("version");
        return typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : absent;
    }

    public Integer wholeNumber(String field) {
        return read(field, null, text -> {
            try {
                return Integer.parseInt(text);
            } catch (NumberFormatException e) {
                throw new Refusal(Message.of("form.not-a-whole-number", "found", text), e);
            }
        });
    }
}
