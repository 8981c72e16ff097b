package tenterbook.label.document.kind;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import tenterbook.label.LabelFacts;
import tenterbook.material.Lot;
import tenterbook.material.Role;

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
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(Light.class.getResourceAsStream("/label/light.csv"), "light.csv"),
                StandardCharsets.UTF_8)) {
            List<Row> rows = new ArrayList<>();
            for (CSVRecord row : format.parse(reader)) {
                rows.add(new Row(
                        anyOf(row.get("words")),
                        row.get("fibres").equals("any") ? null : anyOf(row.get("fibres")),
                        Degree.valueOf(row.get("degree").toUpperCase(Locale.ROOT)),
                        row.get("status")));
            }
            return List.copyOf(rows);
        } catch (IOException e) {
            throw new UncheckedIOException("The program's own table light.csv cannot be read", e);
        }
    }

    private static Pattern anyOf(String words) {
        return Pattern.compile("(?<!\\p{L})(" + words + ")(?!\\p{L})");
    }

    /** The caution in full, with the status of each figure. */
    static String caution(LabelFacts facts) {
        List<String> dyes = facts.lots().stream()
                .filter(lot -> lot.role() == Role.DYE && !lot.name().isEmpty())
                .map(Lot::name)
                .distinct()
                .toList();
        if (dyes.isEmpty()) {
            return "The dyes are not recorded. Plan as for high sensitivity: " + limit(Degree.HIGH);
        }
        String fibres = facts.cloths().stream()
                .flatMap(part -> part.cloth().content().stream())
                .map(share -> share.fibre().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" "));
        List<Judged> judged = dyes.stream().map(dye -> judged(dye, fibres)).toList();
        Degree worst = judged.stream()
                .map(Judged::degree)
                .max(Comparator.naturalOrder())
                .orElse(Degree.HIGH);
        String why = judged.stream()
                .filter(each -> each.degree == worst)
                .map(each -> each.dye + ": " + each.status)
                .collect(Collectors.joining("; "));
        return "%s sensitivity (%s). %s".formatted(Say.capital(word(worst)), why, Say.capital(limit(worst)));
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
                                "not in this program’s table; most plant extracts are of high sensitivity, read second hand, Canadian Conservation Institute"));
    }

    private static String word(Degree degree) {
        return switch (degree) {
            case MEDIUM -> "medium";
            case HIGH -> "high";
            case EXTREME -> "extreme";
        };
    }

    private static String limit(Degree degree) {
        String lux = "at most 50 lux (CIE 157:2004, from memory)";
        return switch (degree) {
            case MEDIUM -> lux + " and 150,000 lux hours a year (the same, from memory).";
            case HIGH ->
                lux
                        + " and 15,000 lux hours a year (CIE 157:2004 as cited by Ishii, Kohmoto and Saito 2006): 300 hours at 50 lux.";
            case EXTREME ->
                lux
                        + " and well under 15,000 lux hours a year, which is too much for such dyes (Ishii, Kohmoto and Saito 2006).";
        };
    }
}
