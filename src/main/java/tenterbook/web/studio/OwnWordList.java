package tenterbook.web.studio;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.search.query.FacetValues;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** The maker's own words as they come in: each once, with what it means. */
final class OwnWordList {
    static final int MOST = 200;
    private static final int LONGEST_WORD = 60;
    private static final int LONGEST_MEANING = 200;

    private OwnWordList() {}

    /** A row as it was typed. */
    record Row(String word, String means) {
        Row {
            word = word.strip();
            means = means.strip();
        }

        boolean blank() {
            return word.isEmpty() && means.isEmpty();
        }
    }

    /** What is wrong, by the number of the row and the field; empty rows are passed over. */
    static Map<Integer, Map<String, Message>> problems(List<Row> rows) {
        Map<Integer, Map<String, Message>> problems = new TreeMap<>();
        List<String> known = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            Map<String, Message> its = new TreeMap<>();
            if (row.blank()) {
                continue;
            }
            String plain = FacetValues.folded(row.word());
            if (plain.isEmpty() || row.word().length() > LONGEST_WORD) {
                its.put(
                        "word",
                        Message.of("own-words.word-expected", "most", LONGEST_WORD, "found", shortened(row.word())));
            } else if (known.contains(plain)) {
                its.put("word", Message.of("own-words.twice", "word", shortened(row.word())));
            }
            if (row.means().isEmpty() || row.means().length() > LONGEST_MEANING) {
                its.put("means", Message.of("own-words.meaning-expected", "most", LONGEST_MEANING, "word", row.word()));
            }
            known.add(plain);
            if (!its.isEmpty()) {
                problems.put(i, its);
            }
        }
        return problems;
    }

    static Map<String, String> means(List<Row> rows) {
        Map<String, String> means = new LinkedHashMap<>();
        rows.stream().filter(row -> !row.blank()).forEach(row -> means.put(row.word(), row.means()));
        return means;
    }

    /**
     * Reads {@code {"words": [{"word": …, "means": …}]}}.
     *
     * @throws Refusal with what was expected and what was found
     */
    static List<Row> read(JsonNode sent) {
        JsonNode words = sent.path("words");
        if (!words.isArray()) {
            throw Refusal.of("own-words.list-expected");
        }
        if (words.size() > MOST) {
            throw Refusal.of("own-words.too-many", "most", MOST, "found", words.size());
        }
        List<Row> rows = new ArrayList<>();
        for (JsonNode each : words) {
            if (!each.path("word").isTextual() || !each.path("means").isTextual()) {
                throw Refusal.of("own-words.list-expected");
            }
            rows.add(new Row(each.get("word").textValue(), each.get("means").textValue()));
        }
        problems(rows).values().stream()
                .flatMap(its -> its.values().stream())
                .findFirst()
                .ifPresent(problem -> {
                    throw new Refusal(problem);
                });
        return rows;
    }

    /** So that a sentence about a text that is too long does not repeat all of it. */
    private static String shortened(String word) {
        return word.length() <= LONGEST_WORD ? word : word.substring(0, LONGEST_WORD) + "…";
    }
}
