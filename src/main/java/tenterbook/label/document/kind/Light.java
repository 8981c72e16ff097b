package tenterbook.label.document.kind;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Role;
import tenterbook.measure.OwnTable;

/**
 * How much light a piece should get, from the dyes and fibres its records name: the most sensitive dye decides. A dye that no
 * row knows counts as one of high sensitivity. For planning, with the status of each figure in its words; no measurement.
 */
final class Light {
    private static final List<Row> ROWS = read();

    private Light() {}

    /** Degrees of sensitivity, the least first. */
    private enum Degree {
        MEDIUM,
        HIGH,
        EXTREME
    }

    private record Row(Pattern words, Pattern fibres, Degree degree, String status) {}

    private record Judged(String dye, Degree degree, String status) {}

    private static List<Row> read() {
        return OwnTable.rows("/label/light.csv").stream()
                .map(row -> new Row(
                        anyOf(row.get("words")),
                        row.get("fibres").equals("any") ? null : anyOf(row.get("fibres")),
                        Degree.valueOf(row.get("degree").toUpperCase(Locale.ROOT)),
                        row.get("status")))
                .toList();
    }

    private static Pattern anyOf(String words) {
        return Pattern.compile("(?<!\\p{L})(" + words + ")(?!\\p{L})");
    }

    /** The degree, the dyes that decide it and the limits; {@link #sources} tells the status of each figure. */
    static String caution(PieceFacts facts) {
        return Denial.NO_DYE_LOTS
                .of(facts)
                .map(denied -> denied + "; plan as for high sensitivity: " + limit(Degree.HIGH))
                .orElseGet(() -> caution(judged(facts)));
    }

    private static String caution(List<Judged> judged) {
        Degree worst = worst(judged);
        String dyes = judged.stream()
                .filter(each -> each.degree == worst)
                .map(Judged::dye)
                .collect(Collectors.joining(", "));
        return "%s sensitivity (%s): %s".formatted(Say.capital(word(worst)), dyes, limit(worst));
    }

    /** Whence the degrees and limits of these pieces come, and whether each was read or is from memory. */
    static String sources(List<PieceFacts> pieces) {
        Map<String, String> dyes = new TreeMap<>();
        pieces.forEach(facts -> {
            List<Judged> judged = judged(facts);
            Degree worst = judged.isEmpty() ? Degree.HIGH : worst(judged);
            judged.stream().filter(each -> each.degree == worst).forEach(each -> dyes.put(each.dye, each.status));
        });
        String named = dyes.entrySet().stream()
                .map(each -> each.getKey() + " " + each.getValue())
                .collect(Collectors.joining("; "));
        return "Light limits are for planning, after CIE 157:2004: 15,000 lux hours a year for high sensitivity as cited by Ishii, Kohmoto and Saito 2006; 50 lux and 150,000 lux hours from memory."
                + (named.isEmpty() ? "" : " Sensitivities: " + named + ".");
    }

    private static Degree worst(List<Judged> judged) {
        return judged.stream()
                .map(Judged::degree)
                .max(Comparator.naturalOrder())
                .orElse(Degree.HIGH);
    }

    private static List<Judged> judged(PieceFacts facts) {
        String fibres = String.join(" ", facts.cloth().fibres()).toLowerCase(Locale.ROOT);
        return facts.lotsUsed(Role.DYE)
                .map(lot -> lot.name().isEmpty() ? "lot " + lot.id() : lot.name())
                .distinct()
                .map(dye -> judged(dye, fibres))
                .toList();
    }

    /** The row of the dye and the fibre; without a recorded fibre the most sensitive row of the dye. */
    private static Judged judged(String dye, String fibres) {
        String plain = dye.toLowerCase(Locale.ROOT);
        return ROWS.stream()
                .filter(row -> row.words.matcher(plain).find())
                .filter(row -> row.fibres == null
                        || fibres.isBlank()
                        || row.fibres.matcher(fibres).find())
                .max(Comparator.comparing(Row::degree))
                .map(row -> new Judged(dye, row.degree, row.status))
                .orElse(
                        new Judged(
                                dye,
                                Degree.HIGH,
                                "not in this program’s table, so taken as high like most plant extracts (read second hand, Canadian Conservation Institute)"));
    }

    private static String word(Degree degree) {
        return switch (degree) {
            case MEDIUM -> "medium";
            case HIGH -> "high";
            case EXTREME -> "extreme";
        };
    }

    private static String limit(Degree degree) {
        return switch (degree) {
            case MEDIUM -> "at most 50 lux, 150,000 lux hours a year.";
            case HIGH -> "at most 50 lux, 15,000 lux hours a year, which is 300 hours at 50 lux.";
            case EXTREME -> "at most 50 lux, and well under 15,000 lux hours a year, which is too much for such dyes.";
        };
    }
}
