package tenterbook.labelling;

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
import tenterbook.words.Language;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * How much light a piece should get, from the dyes and fibres its records name: the most sensitive dye decides. A dye that is
 * not in the table counts as one of high sensitivity. For planning, not a measurement; the status of each figure is printed.
 */
public final class LightAdvice {
    private static final List<LightRule> ROWS = read();

    private LightAdvice() {}

    /** Degrees of sensitivity, the least first. */
    private enum Degree {
        MEDIUM,
        HIGH,
        EXTREME
    }

    private record LightRule(Pattern words, Pattern fibres, Degree degree, Written status) {}

    private record Judged(String dye, Degree degree, Written status) {}

    private static List<LightRule> read() {
        return OwnTable.rows("/label/light.csv").stream()
                .map(row -> new LightRule(
                        anyOf(row.get("words")),
                        row.get("fibres").equals("any") ? null : anyOf(row.get("fibres")),
                        Degree.valueOf(row.get("degree").toUpperCase(Locale.ROOT)),
                        status(row.get("status"), row.get("status-pt"))))
                .toList();
    }

    private static Written status(String english, String portuguese) {
        return conventions ->
                conventions.language().getLanguage().equals(Language.PORTUGUESE.code()) ? portuguese : english;
    }

    private static Pattern anyOf(String words) {
        return Pattern.compile("(?<!\\p{L})(" + words + ")(?!\\p{L})");
    }

    /** The degree, the dyes that decide it and the limits; {@link #sources} tells the status of each figure. */
    public static String caution(PieceFacts facts) {
        return Denial.NO_DYE_LOTS
                .of(facts)
                .map(denied -> Message.of("label.light.not-known", "denied", denied, "limit", limit(Degree.HIGH))
                        .onPaper())
                .orElseGet(() -> caution(judged(facts)));
    }

    private static String caution(List<Judged> judged) {
        Degree worst = worst(judged);
        String dyes = judged.stream()
                .filter(each -> each.degree == worst)
                .map(Judged::dye)
                .collect(Collectors.joining(", "));
        return Message.of("label.light.caution", "degree", word(worst), "dyes", dyes, "limit", limit(worst))
                .onPaper();
    }

    /** The sources of the degrees and limits of these pieces, and whether each was read or is from memory. */
    public static String sources(List<PieceFacts> pieces) {
        Map<String, String> dyes = new TreeMap<>();
        pieces.forEach(facts -> {
            List<Judged> judged = judged(facts);
            Degree worst = judged.isEmpty() ? Degree.HIGH : worst(judged);
            judged.stream()
                    .filter(each -> each.degree == worst)
                    .forEach(each -> dyes.put(each.dye, each.status.onPaper()));
        });
        String named = dyes.entrySet().stream()
                .map(each -> each.getKey() + " " + each.getValue())
                .collect(Collectors.joining("; "));
        String sources = Message.of("label.light.sources").onPaper();
        return named.isEmpty()
                ? sources
                : sources + " "
                        + Message.of("label.light.sensitivities", "dyes", named).onPaper();
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
                .map(lot -> lot.name().isEmpty()
                        ? Message.of("label.light.lot", "lot", lot.id()).onPaper()
                        : lot.name())
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
                .max(Comparator.comparing(LightRule::degree))
                .map(row -> new Judged(dye, row.degree, row.status))
                .orElse(new Judged(dye, Degree.HIGH, Message.of("label.light.not-in-table")));
    }

    private static String word(Degree degree) {
        return degree.name().toLowerCase(Locale.ROOT);
    }

    private static Message limit(Degree degree) {
        return Message.of("label.light.limit", "degree", word(degree));
    }
}
