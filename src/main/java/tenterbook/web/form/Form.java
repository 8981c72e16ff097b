package tenterbook.web.form;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The fields of one form as text, and the problems found in reading them.
 *
 * <p>Names are dotted, with numbers for rows: {@code steps.0.charges.1.wof}. Reading a field that cannot be understood
 * notes a problem and gives 'not recorded', so that all problems are found at once and everything typed is shown again.
 * Not for several threads.
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
        return values.entrySet().stream()
                .flatMap(entry -> entry.getValue().stream().map(value -> encode(entry.getKey()) + "=" + encode(value)))
                .collect(Collectors.joining("&"));
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** Start of the names of the row that {@link #rearrange} added; empty where it added none. */
    public String added() {
        return added;
    }

    // ---- what templates ask

    /** Everything typed, for sending it elsewhere: not the version, and not the field {@code key}, which names the record. */
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

    /** The sentence about a field that could not be understood; empty where all is well. */
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

    /** The rows of a repeated part, in order; gaps in numbering are closed up by {@link #tidied}. */
    public List<Form> rows(String part) {
        String start = name(part) + ".";
        TreeSet<Integer> indices = new TreeSet<>();
        for (String key : values.keySet()) {
            if (key.startsWith(start)) {
                String index = key.substring(start.length()).split("\\.", 2)[0];
                if (index.matches("\\d{1,4}")) {
                    indices.add(Integer.parseInt(index));
                }
            }
        }
        return indices.stream()
                .map(i -> new Form(values, problems, start + i + "."))
                .toList();
    }

    public Form row(String part, int index) {
        return new Form(values, problems, name(part) + "." + index + ".");
    }

    /** The fields of a part that stands inside this form. */
    public Form inside(String part) {
        return new Form(values, problems, name(part) + ".");
    }

    /** The start of this row's names without its last dot, as in {@code steps.0}. */
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

    // ---- changing

    public Form put(String field, Object value) {
        String text = value == null ? "" : value.toString();
        values.put(name(field), new ArrayList<>(List.of(text)));
        return this;
    }

    /** Adds an empty row after the last, or takes one away: 'add steps', 'drop steps.2', 'add steps.0.charges'. */
    public void rearrange(String order) {
        String[] words = order.strip().split("\\s+", 2);
        if (words.length < 2 || !words[1].matches("[A-Za-z]+(\\.([A-Za-z]+|\\d{1,4}))*")) {
            return;
        }
        boolean row = words[1].matches(".*\\.\\d{1,4}");
        if (words[0].equals("add") && !row) {
            List<Form> rows = rows(words[1]);
            int next = rows.isEmpty() ? 0 : lastIndex(rows) + 1;
            put(words[1] + "." + next + ".there", "1");
            added = name(words[1] + "." + next + ".");
        } else if (words[0].equals("drop") && row) {
            values.keySet().removeIf(name -> name.startsWith(words[1] + "."));
        } else if (words[0].equals("up") && row) {
            moveUp(words[1]);
        }
    }

    private static int lastIndex(List<Form> rows) {
        String[] parts = rows.get(rows.size() - 1).prefix.split("\\.");
        return Integer.parseInt(parts[parts.length - 1]);
    }

    private void moveUp(String row) {
        int dot = row.lastIndexOf('.');
        String part = row.substring(0, dot);
        int index = Integer.parseInt(row.substring(dot + 1));
        List<Form> rows = rows(part);
        Integer before = rows.stream()
                .map(each -> each.prefix.split("\\."))
                .map(names -> Integer.parseInt(names[names.length - 1]))
                .filter(i -> i < index)
                .reduce((first, second) -> second)
                .orElse(null);
        if (before == null) {
            return;
        }
        String here = part + "." + index + ".";
        String there = part + "." + before + ".";
        Map<String, List<String>> swapped = new LinkedHashMap<>();
        values.forEach((name, list) -> {
            String other = name.startsWith(here)
                    ? there + name.substring(here.length())
                    : name.startsWith(there) ? here + name.substring(there.length()) : name;
            swapped.put(other, list);
        });
        values.clear();
        values.putAll(swapped);
    }

    public void problem(String field, String sentence) {
        problems.putIfAbsent(name(field), sentence);
    }

    // ---- reading

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

    /** A field read by a record's own reader, such as an identifier's constructor; blank gives {@code blank}. */
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
