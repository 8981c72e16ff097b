package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

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
}
