package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Asking for a fibre finds cloths recorded so and those called so of which no fibre is recorded, and says which these are. */
class FibreByNameTest extends Scenario {
    private void piece(String number, String cloth, String name, String... fibre) throws IOException {
        List<String> form = new ArrayList<>(List.of("id", cloth, "name", name));
        if (fibre.length > 0) {
            form.addAll(List.of("content.0.fibre", fibre[0], "content.0.percent", "100"));
        }
        saved("/cloths", form.toArray(String[]::new));
        saved("/clampings", "id", "C24-0" + number, "cuts.0.cloth", cloth);
        saved("/pieces", "number", "V24-0" + number, "made.0.clamping", "C24-0" + number);
    }

    private List<String> found(String question) throws IOException {
        List<String> numbers = new ArrayList<>();
        client.get("/api/pieces?q=" + URLEncoder.encode(question, StandardCharsets.UTF_8))
                .json()
                .get("pieces")
                .forEach(piece -> numbers.add(piece.get("number").textValue()));
        return numbers;
    }

    @Test
    void aRecordedFibreCountsAndANameOnlyWhereNoneIsRecorded() throws IOException {
        piece("01", "SH", "sheeting", "linen");
        piece("02", "LV", "linen voile");
        piece("03", "LL", "linen look", "cotton");
        piece("04", "HB", "habotai");
        piece("05", "LF", "linho fino");
        for (String question : List.of("linen", "linho")) {
            assertThat(found(question)).as(question).containsExactlyInAnyOrder("V24-001", "V24-002", "V24-005");
        }
        assertThat(found("cotton")).containsExactly("V24-003");
        assertThat(found("not linen")).containsExactlyInAnyOrder("V24-003", "V24-004");
        assertThat(found("never without linen")).hasSize(3);
        assertThat(found("not linen voile")).containsExactlyInAnyOrder("V24-001", "V24-003", "V24-004", "V24-005");
        assertThat(found("linen or not linen")).hasSize(5);
        assertThat(found("cotton or not linen")).containsExactlyInAnyOrder("V24-003", "V24-004");
        String page = client.get("/?q=linen").words();
        assertThat(page).contains("Fibre: linen, or by its name alone: ", "linen voile", "linho fino");
        assertThat(client.get("/?q=not+not+linen").words())
                .contains("Denials stand together in ‘not not linen’", "not Fibre: linen");
    }
}
