package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** The first page of an empty archive. */
class FirstPageTest extends Scenario {
    @Test
    void anEmptyArchiveAsksOnceWhoseItIsAlsoWhereThatIsSkippedAndThenOffersWhereToBegin() throws IOException {
        assertThat(client.get("/").words()).contains("Whose archive is this?").doesNotContain("No pieces yet");
        Answer wrong = client.post("/first", "name", "Oficina", "numbers", "V2");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.field("name")).isEqualTo("Oficina");
        saved("/first", "skip", "yes");
        assertThat(client.get("/").words())
                .doesNotContain("Whose archive")
                .contains("No pieces yet", "Record a piece", "Bring in a sheet", "Restore a backup");
        assertThat(client.post("/first", "name", "Outra").location()).isEqualTo("/studio");
        assertThat(wiring.archive().studio().name()).isEmpty();
    }
}
