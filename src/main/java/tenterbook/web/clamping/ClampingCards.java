package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.web.form.Form;
import tenterbook.web.record.Choices.Choice;

/** One line for each card of the form of a clamping, of what is typed so far and as it is typed. */
public record ClampingCards(
        List<Choice> boards, List<Choice> cloths, List<Choice> lots, List<Choice> styles, List<Choice> axes) {

    /** By the HTML id of the card. A card in which nothing is typed has an empty line. */
    public Map<String, String> lines(Form form) {
        Map<String, String> lines = new LinkedHashMap<>();
        lines.put("card-boards", rows(form, "boards", row -> label(boards, row.text("use"))));
        lines.put("card-cuts", rows(form, "cuts", this::cut));
        lines.put(
                "card-fold",
                together(
                        rows(form, "fold.folds", this::fold),
                        form.text("fold.layersCounted").isEmpty()
                                ? ""
                                : w("clamping-form.card-layers", "layers", form.text("fold.layersCounted"))));
        lines.put("card-clamp", texts(form, "clamped", "pressure", "water"));
        lines.put("card-where", texts(form, "dyer", "place", "country"));
        lines.put("card-notes", texts(form, "materials", "lesson", "notes"));
        form.rows("steps").forEach(step -> lines.put(card(step), step(step)));
        return lines;
    }

    /** The HTML id of the card of a row. */
    public static String card(Form row) {
        return "card-" + row.at().replace('.', '-');
    }

    private String cut(Form row) {
        String size = Stream.of(row.text("length"), row.text("width"))
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(" × "));
        String count = row.text("count");
        return together(
                label(cloths, row.text("cloth")), size, count.isEmpty() ? "" : "× " + count, row.text("weighed"));
    }

    private String fold(Form row) {
        return Stream.of(label(styles, row.text("style")), row.text("panels"), label(axes, row.text("axis")))
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private String step(Form row) {
        List<String> parts = new ArrayList<>();
        for (Form charge : row.rows("charges")) {
            String wof = charge.text("wof");
            parts.add(together(
                            label(lots, charge.text("lot")).replaceFirst(" \\([^()]*\\)$", ""),
                            charge.has("weighed")
                                    ? charge.text("weighed")
                                    : wof.isEmpty()
                                            ? ""
                                            : w("clampings.wof", "signed", wof.contains("%"), "share", wof))
                    .replace(" · ", " "));
        }
        Form dips = row.inside("dips");
        String count = dips.has("count")
                ? dips.text("count")
                : dips.rows("dips").isEmpty()
                        ? ""
                        : String.valueOf(dips.rows("dips").size());
        parts.add(count.isEmpty() ? "" : w("pieces.card-dips", "dips", count));
        parts.add(row.text("vat").isEmpty() ? "" : w("clampings.in-vat", "vat", row.text("vat")));
        parts.add(row.text("holes").isEmpty() ? "" : w("clamping-form.card-holes", "holes", row.text("holes")));
        parts.add(texts(row, "temperature", "duration", "when"));
        return together(parts.toArray(String[]::new));
    }

    private static String rows(Form form, String part, java.util.function.Function<Form, String> line) {
        return form.rows(part).stream()
                .map(line)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static String texts(Form form, String... names) {
        return together(Stream.of(names).map(form::text).toArray(String[]::new));
    }

    private static String together(String... parts) {
        return Stream.of(parts).filter(text -> !text.isEmpty()).collect(Collectors.joining(" · "));
    }

    /** What a choice is called; its value where it is none of the choices. */
    private static String label(List<Choice> choices, String value) {
        return choices.stream()
                .filter(choice -> choice.value().equals(value))
                .map(Choice::label)
                .findFirst()
                .orElse(value);
    }
}
