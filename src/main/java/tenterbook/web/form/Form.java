package tenterbook.web.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
        return of(FormEncoding.decoded(body));
    }

    /** All fields in the form of an HTML form post. */
    public String encoded() {
        return Address.query(values);
    }

    /** Prefix of the names in the row that {@link #rearrange} added last; empty where it added none. */
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

    /** Whether a problem was found in this row or, given a field or a part, in that. */
    public boolean inDoubt(String part) {
        String start = name(part);
        return problems.keySet().stream()
                .anyMatch(name -> name.equals(start) || name.startsWith(part.isEmpty() ? start : start + "."));
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
        return FormRows.numbers(values, name(part)).stream()
                .map(number -> row(part, number))
                .toList();
    }

    public Form row(String part, int index) {
        return new Form(values, problems, name(part) + "." + index + ".");
    }

    /** The fields of a part inside this form. */
    public Form inside(String part) {
        return new Form(values, problems, name(part) + ".");
    }

    /** Names of the parts inside a part, as {@code a} and {@code b} in {@code part.a.x} and {@code part.b.x}. */
    public List<String> parts(String part) {
        String start = name(part) + ".";
        return values.keySet().stream()
                .filter(name -> name.startsWith(start) && name.indexOf('.', start.length()) > 0)
                .map(name -> name.substring(start.length(), name.indexOf('.', start.length())))
                .distinct()
                .toList();
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

    /** As {@link FormRows#rearrange}; to the whole form, not to a row. */
    public void rearrange(String order) {
        added = new FormRows(values).rearrange(order);
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
