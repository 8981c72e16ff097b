package tenterbook.web.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.web.Site;
import tenterbook.words.Refusal;

/** A label request as the parameters of the print page, and back. All other parameters belong to a search for pieces. */
final class PrintParameters {
    /** Before the name of a kept sheet. */
    static final String OWN = "own:";

    private static final Set<String> NAMES = Set.of(
            "kind",
            "market",
            "sheet",
            "arrangement",
            "wide",
            "high",
            "roll",
            "from",
            "copies",
            "showprice",
            "black",
            "bare",
            "symbols",
            "boards",
            "words",
            "soldIn",
            "nomarks",
            "nohole",
            "bleed");
    private static final Set<String> OTHERS = Set.of("pieces", "chosen", "find", Preview.SHOWN);

    private final Map<String, String> asked = new LinkedHashMap<>();
    private final Map<String, List<String>> search = new TreeMap<>();

    PrintParameters(Map<String, List<String>> parameters) {
        parameters.forEach((name, values) -> {
            if (NAMES.contains(name)) {
                asked.put(name, String.join(",", values).strip());
            } else if (!OTHERS.contains(name)) {
                search.put(name, values);
            }
        });
    }

    /** What is asked of a search for the pieces to print; empty where nothing is. */
    Map<String, List<String>> search() {
        return search;
    }

    /** What was typed, by parameter. */
    Map<String, String> asked() {
        return asked;
    }

    LabelKind kind() {
        return named(LabelKind.values(), "kind").orElse(LabelKind.HANG_TAG);
    }

    Market market(Site site) {
        return named(Market.values(), "market")
                .orElseGet(() -> Market.of(site.archive().studio()));
    }

    private <E extends CodedChoice> Optional<E> named(E[] all, String name) {
        return CodedChoice.find(all, asked.getOrDefault(name, ""));
    }

    /**
     * The one place where parameters become settings.
     *
     * @throws IllegalArgumentException for a choice that cannot be printed, with a sentence for the person who made it
     */
    PrintSettings request(Site site) {
        LabelKind kind = kind();
        Optional<LabelSheet> own = own(site);
        SheetSize sheet = own.isPresent()
                ? SheetSize.OWN
                : named(SheetSize.values(), "sheet")
                        .filter(s -> s != SheetSize.OWN)
                        .orElse(SheetSize.SINGLE);
        return new PrintSettings(
                kind,
                market(site),
                new PrintSettings.Format(
                        own.map(LabelSheet::labelWidthMm).orElseGet(() -> number("wide", kind.widthMm())),
                        own.map(LabelSheet::labelHeightMm).orElseGet(() -> number("high", kind.heightMm())),
                        named(Arrangement.values(), "arrangement")
                                .filter(kind.arrangements()::contains)
                                .orElse(null)),
                new PrintSettings.Content(
                        flag("showprice"),
                        !flag("bare"),
                        flag("symbols"),
                        flag("boards"),
                        asked.getOrDefault("words", ""),
                        asked.getOrDefault("soldIn", "")),
                new PrintSettings.Placement(
                        sheet,
                        own.orElse(null),
                        number("roll", PrintSettings.Placement.USUAL_ROLL_MM),
                        (int) number("from", 1),
                        (int) number("copies", 1)),
                new PrintSettings.Finish(
                        flag("black") || sheet == SheetSize.ROLL,
                        !flag("nomarks"),
                        !flag("nohole"),
                        number("bleed", 0)));
    }

    private Optional<LabelSheet> own(Site site) {
        String sheet = asked.getOrDefault("sheet", "");
        if (!sheet.startsWith(OWN)) {
            return Optional.empty();
        }
        String name = sheet.substring(OWN.length());
        return Optional.of(site.ledger()
                .find(Kinds.LABEL_SHEET, name)
                .map(Saved::record)
                .orElseThrow(() -> Refusal.of("print.no-such-sheet", "name", name)));
    }

    private boolean flag(String name) {
        return !asked.getOrDefault(name, "").isEmpty();
    }

    private double number(String name, double absent) {
        String text = asked.getOrDefault(name, "");
        if (text.isEmpty()) {
            return absent;
        }
        String plain = text.replaceAll("\\s*mm$", "").replace(',', '.');
        boolean whole = name.equals("from") || name.equals("copies");
        if (!plain.matches(whole ? "\\d{1,5}" : "\\d{1,4}([.]\\d{1,3})?")) {
            throw Refusal.of("print.number-unreadable", "field", name, "found", text);
        }
        return Double.parseDouble(plain);
    }

    /** The parameters that ask for the same label again. */
    static Map<String, String> of(PrintSettings request) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("kind", request.kind().code());
        choices.put("market", request.market().code());
        boolean own = request.placement().sheet() == SheetSize.OWN;
        choices.put(
                "sheet",
                own
                        ? OWN + request.placement().own().name()
                        : request.placement().sheet().code());
        choices.put("arrangement", request.format().arrangement().code());
        if (!own && request.format().widthMm() != request.kind().widthMm()) {
            choices.put("wide", Double.toString(request.format().widthMm()));
        }
        if (!own && request.format().heightMm() != request.kind().heightMm()) {
            choices.put("high", Double.toString(request.format().heightMm()));
        }
        if (request.placement().sheet() == SheetSize.ROLL) {
            choices.put("roll", Double.toString(request.placement().rollMm()));
        }
        for (Map.Entry<String, Boolean> flag : List.of(
                Map.entry("showprice", request.content().priceShown()),
                Map.entry("black", request.finish().blackOnly()),
                Map.entry("bare", !request.content().fullContent()),
                Map.entry("symbols", request.content().careSymbols()),
                Map.entry("boards", request.content().boardsNamed()),
                Map.entry("nomarks", !request.finish().cutMarks()),
                Map.entry("nohole", !request.finish().holeMark()))) {
            if (flag.getValue()) {
                choices.put(flag.getKey(), "1");
            }
        }
        if (!request.content().words().isEmpty()) {
            choices.put("words", request.content().words());
        }
        if (!request.content().soldIn().isEmpty()) {
            choices.put("soldIn", request.content().soldIn());
        }
        if (request.finish().bleedMm() > 0) {
            choices.put("bleed", Double.toString(request.finish().bleedMm()));
        }
        return choices;
    }

    /** The choices as they came, for links and hidden fields; without the search. */
    List<Map.Entry<String, String>> fields() {
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        asked.forEach((name, value) -> {
            if (!value.isEmpty()) {
                fields.add(Map.entry(name, value));
            }
        });
        return fields;
    }

    /** The search as it came, for hidden fields. */
    List<Map.Entry<String, String>> searchFields() {
        List<Map.Entry<String, String>> fields = new ArrayList<>();
        search.forEach((name, values) -> values.forEach(value -> fields.add(Map.entry(name, value))));
        return fields;
    }
}
