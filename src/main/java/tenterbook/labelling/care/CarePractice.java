package tenterbook.labelling.care;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.measure.NumberWords;
import tenterbook.measure.OwnTable;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.words.Message;

/** Common practice, {@code /label/care-practice.csv}: questions to the maker, never words on a label. */
final class CarePractice {
    /**
     * One row.
     *
     * @param answeredBy words of the kinds of test that answer it
     * @param most the warmest wash usually dared, in °C; null for none
     */
    private record PracticeRow(
            CareCase.Of of, Pattern words, String says, List<String> answeredBy, Double most, String source) {
        /** The source's addition to common practice; may be empty. */
        String further() {
            return source.replaceFirst("^common practice", "");
        }
    }

    private static final List<PracticeRow> ROWS = OwnTable.rows("/label/care-practice.csv").stream()
            .map(row -> new PracticeRow(
                    CareCase.Of.valueOf(row.get("of").toUpperCase(Locale.ROOT)),
                    words(row.get("words")),
                    row.get("says"),
                    List.of(row.get("answered_by").split("\\|")),
                    row.get("most").isEmpty() ? null : Double.valueOf(row.get("most")),
                    row.get("source")))
            .toList();

    private CarePractice() {}

    private static Pattern words(String cell) {
        return Pattern.compile("(?<![\\p{L}])("
                + Arrays.stream(cell.split("\\|")).map(Pattern::quote).collect(Collectors.joining("|"))
                + ")(?![\\p{L}])");
    }

    static List<Question> questions(CareCase about, CareEvidence evidence, Rule rule) {
        Set<Message> asked = new LinkedHashSet<>();
        for (PracticeRow row : ROWS) {
            List<String> named = about.materials().stream()
                    .filter(m -> m.of() == row.of
                            && row.words.matcher(plain(m.name())).find())
                    .map(CareCase.Material::name)
                    .distinct()
                    .toList();
            if (!named.isEmpty()) {
                asked.addAll(asked(row, String.join(", ", named), evidence));
            }
        }
        return asked.stream().map(text -> new Question(text, rule)).toList();
    }

    /**
     * A limit from common practice for a material.
     *
     * @param celsius the warmest wash usually dared
     */
    record Limit(double celsius, String why) {}

    /** The least of the limits of all materials; empty where none has one. */
    static Optional<Limit> limit(CareCase about) {
        return ROWS.stream()
                .filter(row -> row.most != null
                        && about.materials().stream()
                                .anyMatch(m -> m.of() == row.of
                                        && row.words.matcher(plain(m.name())).find()))
                .map(row -> new Limit(row.most, row.says))
                .min(Comparator.comparingDouble(Limit::celsius));
    }

    private static List<Message> asked(PracticeRow row, String named, CareEvidence evidence) {
        List<Message> asked = new ArrayList<>();
        boolean answered = evidence.judged().stream()
                .anyMatch(t -> row.answeredBy.contains(t.kind().toString()));
        if (!answered) {
            asked.add(Message.of(
                    "care.practice.test",
                    "kinds",
                    kinds(row),
                    "says",
                    row.says,
                    "named",
                    named,
                    "further",
                    row.further()));
        }
        CareTest wash = evidence.wash().test();
        if (row.most != null && evidence.wash().allowed() && CareEvidence.measured(wash)) {
            double celsius = CareEvidence.proven(wash);
            if (celsius > row.most + 1e-6) {
                asked.add(Message.of(
                        "care.practice.too-warm",
                        "temperature",
                        wash.temperature(),
                        "says",
                        row.says,
                        "most",
                        NumberWords.decimals(row.most, 0),
                        "unit",
                        Unit.CELSIUS.symbol(),
                        "named",
                        named,
                        "further",
                        row.further()));
            }
        }
        return asked;
    }

    private static Object kinds(PracticeRow row) {
        return row.answeredBy.stream()
                .map(Object.class::cast)
                .reduce((one, other) -> Message.of("care.or", "one", one, "other", other))
                .orElseThrow();
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replace("sulf", "sulph")
                .replace("aluminum", "aluminium")
                .replaceAll("[\\s\\p{Z}_-]+", " ");
    }
}
