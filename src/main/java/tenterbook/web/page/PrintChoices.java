package tenterbook.web.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.LabelSheet;
import tenterbook.label.Arrangement;
import tenterbook.label.Issue;
import tenterbook.label.LabelKind;
import tenterbook.label.LabelRequest;
import tenterbook.label.Laying;
import tenterbook.label.SheetSize;
import tenterbook.label.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.web.Site;
import tenterbook.words.Refusal;

/** A label request as the parameters of the print page, and back. All other parameters belong to a search for pieces. */
final class PrintChoices {
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
            "nomarks",
            "nohole",
            "bleed");
    private static final Set<String> OTHERS = Set.of("pieces", "chosen");

    private final Map<String, String> asked = new LinkedHashMap<>();
    private final Map<String, List<String>> search = new TreeMap<>();

    PrintChoices(Map<String, List<String>> parameters) {
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
        return named(Market.values(), "market").orElse(Market.of(site.currency()));
    }

    private <E extends Enum<E>> Optional<E> named(E[] all, String name) {
        return Stream.of(all)
                .filter(each -> Issue.word(each).equals(asked.getOrDefault(name, "")))
                .findFirst();
    }

    /** @throws IllegalArgumentException for a choice that cannot be, with a sentence for the person who made it */
    LabelRequest request(Site site) {
        LabelKind kind = kind();
        Optional<LabelSheet> own = own(site);
        SheetSize sheet = own.isPresent()
                ? SheetSize.OWN
                : named(SheetSize.values(), "sheet")
                        .filter(s -> s != SheetSize.OWN)
                        .orElse(SheetSize.SINGLE);
        Laying laying = new Laying(
                own.orElse(null),
                number("roll", Laying.USUAL.rollMm()),
                (int) number("from", 1),
                (int) number("copies", 1),
                !flag("nomarks"),
                !flag("nohole"),
                number("bleed", 0));
        Arrangement arrangement = named(Arrangement.values(), "arrangement")
                .filter(kind.arrangements()::contains)
                .orElse(null);
        return new LabelRequest(
                kind,
                market(site),
                sheet,
                own.map(LabelSheet::labelWidthMm).orElseGet(() -> number("wide", kind.widthMm())),
                own.map(LabelSheet::labelHeightMm).orElseGet(() -> number("high", kind.heightMm())),
                flag("showprice"),
                flag("black") || sheet == SheetSize.ROLL,
                !flag("bare"),
                flag("symbols"),
                arrangement,
                laying);
    }

    private Optional<LabelSheet> own(Site site) {
        String sheet = asked.getOrDefault("sheet", "");
        if (!sheet.startsWith(OWN)) {
            return Optional.empty();
        }
        String name = sheet.substring(OWN.length());
        return Optional.of(site.archive()
                .ledger()
                .find(Kinds.LABEL_SHEET, name)
                .map(Saved::record)
                .orElseThrow(() -> Refusal.of("printing.no-such-sheet", "name", name)));
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
            throw Refusal.of("printing.number-unreadable", "field", name, "found", text);
        }
        return Double.parseDouble(plain);
    }

    /** The parameters that ask for the same label again. */
    static Map<String, String> of(LabelRequest request) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("kind", Issue.word(request.kind()));
        choices.put("market", Issue.word(request.market()));
        Laying laying = request.laying();
        boolean own = request.sheet() == SheetSize.OWN;
        choices.put("sheet", own ? OWN + laying.own().name() : Issue.word(request.sheet()));
        choices.put("arrangement", Issue.word(request.arrangement()));
        if (!own && request.widthMm() != request.kind().widthMm()) {
            choices.put("wide", Double.toString(request.widthMm()));
        }
        if (!own && request.heightMm() != request.kind().heightMm()) {
            choices.put("high", Double.toString(request.heightMm()));
        }
        if (request.sheet() == SheetSize.ROLL) {
            choices.put("roll", Double.toString(laying.rollMm()));
        }
        for (Map.Entry<String, Boolean> flag : List.of(
                Map.entry("showprice", request.priceShown()),
                Map.entry("black", request.blackOnly()),
                Map.entry("bare", !request.fullContent()),
                Map.entry("symbols", request.careSymbols()),
                Map.entry("nomarks", !laying.cutMarks()),
                Map.entry("nohole", !laying.holeMark()))) {
            if (flag.getValue()) {
                choices.put(flag.getKey(), "1");
            }
        }
        if (laying.bleedMm() > 0) {
            choices.put("bleed", Double.toString(laying.bleedMm()));
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
