package tenterbook.web.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.archive.field.TextCharacters;
import tenterbook.archive.field.Value;
import tenterbook.archive.field.Written;
import tenterbook.archive.record.FieldWords;
import tenterbook.archive.record.SideUnits;
import tenterbook.archive.record.StoredCodes;
import tenterbook.web.page.TypedLengths;
import tenterbook.web.page.Words;
import tenterbook.words.Message;

/**
 * Fills a form from a value that a part describes and reads it back. A field has its stored name, dotted inside parts and numbered in
 * lists, as in {@code steps.0.charges.1.wof}. Every problem is noted beside its field.
 */
public class PartForm<T> {
    private static final Pattern ROW = Pattern.compile("(?<list>\\w+)\\.(?<row>\\d+)\\.(?<field>\\w+)");

    private final Part<T> part;
    private final Set<String> notShown;
    private final Supplier<Currency> currency;

    /**
     * @param notShown fields that the form does not show and leaves as they are, as in {@code photos.regions}
     * @param currency of a price that names none
     */
    public PartForm(Part<T> part, Set<String> notShown, Supplier<Currency> currency) {
        this.part = part;
        this.notShown = Set.copyOf(notShown);
        this.currency = currency;
    }

    public final Part<T> part() {
        return part;
    }

    /** A form filled from the record. */
    public Form filled(T record) {
        Form form = Form.empty();
        fill(part, part.write(record), form);
        return form;
    }

    /**
     * The record that a form describes; null where a field could not be read, which is noted beside it.
     *
     * @param form what was typed
     * @param old the record as it was, for what the form does not show; null for a new one
     */
    public T read(Form form, T old) {
        prepare(form);
        ObjectNode before = old == null ? null : part.write(old);
        if (before != null) {
            if (!part.key().isEmpty()) {
                form.put(part.key(), before.path(part.key()).asText());
            }
            notShown.stream()
                    .filter(name -> !name.contains(".") && !form.has(name))
                    .forEach(name -> form.put(name, before.path(name).asText()));
        }
        Faults faults = new Faults();
        Map<String, String> rows = new LinkedHashMap<>();
        Input input = new Input(new Reading(currency.get(), TypedLengths.now()), faults, rows);
        ObjectNode typed = object(part, form, input, "");
        if (before != null) {
            part.keep(notShown, before, typed);
        }
        SideUnits.check(typed, before, faults);
        if (before != null) {
            new UneditedTexts(part, before).putBack(part, typed);
        }
        T record = faults.isEmpty() ? part.read(typed, faults, "") : null;
        faults.all().forEach((at, sentence) -> form.problem(shown(at, rows), Words.w(sentence)));
        return form.hasProblems() ? null : record;
    }

    /** The form's name for a field of the record, which numbers rows without the blank ones. */
    private static String shown(String at, Map<String, String> rows) {
        String start = at;
        while (!start.isEmpty() && !rows.containsKey(start)) {
            start = start.contains(".") ? start.substring(0, start.lastIndexOf('.')) : "";
        }
        return start.isEmpty() ? at : rows.get(start) + at.substring(start.length());
    }

    /** Puts a fault of the record beside the field in which that was typed. */
    public void problem(Form form, String at, String sentence) {
        Matcher row = ROW.matcher(at);
        if (row.matches()) {
            String list = row.group("list");
            Form typed = kept(list, form).get(Integer.parseInt(row.group("row")));
            typed.problem(row.group("field"), sentence);
        } else {
            form.problem(at, sentence);
        }
    }

    /** Rows left out or blank are in the form and not in the record. */
    private List<Form> kept(String list, Form form) {
        return form.rows(list).stream()
                .filter(row -> !row.checked("leaveOut") && !untouched(list, row))
                .toList();
    }

    /** Moves what the form shows in another way to the names of the record's fields. */
    protected void prepare(Form form) {}

    /** Puts what is stored into the fields of a form or of one of its rows. */
    protected static void fill(Part<?> part, ObjectNode stored, Form form) {
        for (Field<?, ?> field : part.fields()) {
            JsonNode json = stored.get(field.name());
            if (json != null) {
                fill(field.value(), field.name(), json, form);
            } else if (field.value() instanceof Written<?>) {
                form.put(field.name(), "");
            }
        }
    }

    private static void fill(Value<?> value, String name, JsonNode json, Form form) {
        if (value instanceof Written<?> written) {
            form.put(name, written.textOf(json, TypedLengths.now()));
            if (json.has("basis")) {
                form.put(name + ".basis", json.get("basis").textValue());
            }
        } else if (value instanceof Part<?> inner) {
            fill(inner, (ObjectNode) json, form.inside(name));
        } else if (value instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
            for (int i = 0; i < json.size(); i++) {
                fill(row, (ObjectNode) json.get(i), form.row(name, i));
            }
        } else if (value instanceof ListOf<?>) {
            form.put(
                    name,
                    String.join(", ", json.valueStream().map(JsonNode::asText).toList()));
        }
    }

    /** @param rows names of rows in the form, by their place in the record */
    private record Input(Reading reading, Faults faults, Map<String, String> rows) {}

    private ObjectNode object(Part<?> described, Form form, Input input, String at) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        for (Field<?, ?> field : described.fields()) {
            String inside = input.faults.inside(at, field.name());
            JsonNode json = value(field.value(), field.name(), form, input, inside);
            if (json != null && !(json.isContainerNode() && json.isEmpty())) {
                object.set(field.name(), json);
            } else if (field.required() && !input.faults.within(inside)) {
                input.faults.add(inside, FieldWords.missing(described, field));
            }
        }
        return object;
    }

    private JsonNode value(Value<?> value, String name, Form form, Input input, String at) {
        Optional<Message> fault = TextCharacters.fault(form.value(name));
        if (fault.isPresent()) {
            input.faults.add(at, fault.get());
            return null;
        }
        if (value instanceof Written<?> written) {
            return withBasis(written.fromText(form.text(name), input.reading, input.faults, at), name, form);
        }
        if (value instanceof Part<?> inner) {
            Form inside = form.inside(name);
            return inside.blank() ? null : object(inner, inside, input, at);
        }
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        if (value instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
            for (Form each : kept(name, form)) {
                String place = at + "." + array.size();
                input.rows.put(place, each.at());
                array.add(object(row, each, input, place));
            }
        } else {
            for (String one : form.text(name).split("\\s*[,;]\\s*")) {
                if (!one.isBlank()) {
                    array.add(TextNode.valueOf(one.strip()));
                }
            }
        }
        return array;
    }

    private static JsonNode withBasis(JsonNode json, String name, Form form) {
        String basis = form.text(name + ".basis");
        if (json instanceof ObjectNode quantity && StoredCodes.BASIS.all().contains(basis)) {
            quantity.put("basis", basis);
        }
        return json;
    }

    /** Whether nothing was entered in a row beside what the form itself put there. */
    protected boolean untouched(String list, Form row) {
        return row.blank();
    }
}
