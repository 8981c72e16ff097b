package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Which pieces lack a tag is one search, also for pieces whose colours are named. */
class TagSearchTest {
    private static SampleStudio studio;

    @BeforeAll
    static void open() {
        studio = SampleStudio.readOnly();
    }

    private static List<String> found(String query) throws IOException {
        Answer answer = new Client(studio.wiring().port()).get("/api/pieces?size=100&" + query);
        assertThat(answer.status()).isEqualTo(200);
        List<String> numbers = new ArrayList<>();
        answer.json()
                .get("pieces")
                .forEach(piece -> numbers.add(piece.get("number").textValue()));
        return numbers;
    }

    /** The sample studio printed tags for three pieces; one of them was dyed again since. */
    @Test
    void aTagThatSaysWhatItWouldSayTodayIsCurrentAndAllOthersAreLacking() throws IOException {
        assertThat(found("tag=eu:current")).containsExactlyInAnyOrder("V24-001", "V24-003");
        assertThat(found("tag=eu:out-of-date")).containsExactly("V24-002");
        assertThat(found("tag=eu:lacking"))
                .hasSize(21)
                .contains("V24-002", "V24-010")
                .doesNotContain("V24-001", "V24-003");
    }

    private static final List<String> OTHERS = List.of(
            "",
            "&status=in-stock",
            "&board=B01&board=B02",
            "&q=indigo",
            "&q=heron",
            "&colour=40,-4,-23&within=15",
            "&dips=1..5&finished=2024",
            "&status=sold&q=silk");

    /** What a search by tag finds beside any other choice is what both find, and the counts told are those of the searches. */
    @Test
    void aTagNarrowsAndIsCountedBesideAnyOtherChoice() throws IOException {
        int found = 0;
        for (String others : OTHERS) {
            List<String> all = found(others);
            JsonNode counts = facet(others);
            for (String market : List.of("eu", "us", "jp")) {
                for (String state : List.of("current", "out-of-date", "none-printed", "cannot-be-made", "lacking")) {
                    String tag = market + ":" + state;
                    List<String> both = found("tag=" + tag + others);
                    List<String> expected = new ArrayList<>(all);
                    expected.retainAll(found("tag=" + tag));
                    assertThat(both).as(tag + others).containsExactlyInAnyOrderElementsOf(expected);
                    assertThat(count(counts, tag)).as(tag + others).isEqualTo(both.size());
                    found += both.size();
                }
            }
        }
        assertThat(found).isGreaterThan(100);
    }

    private static JsonNode facet(String query) throws IOException {
        return new Client(studio.wiring().port())
                .get("/api/pieces?size=1" + query)
                .json()
                .get("facets");
    }

    private static int count(JsonNode facets, String value) {
        for (JsonNode facet : facets) {
            for (JsonNode count : facet.get("counts")) {
                if (facet.get("name").textValue().equals("tag")
                        && count.get("value").textValue().equals(value)) {
                    return count.get("count").intValue();
                }
            }
        }
        return 0;
    }
}
