package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** Two pieces side by side, as they are typed. */
class CompareTest extends Scenario {
    @Test
    void aPieceThatIsNotThereIsToldBesideItsFieldAndBothTextsStay() throws IOException {
        studio();
        saved("/pieces", "number", "V24-002", "title", "Garça");
        Answer answer = client.get("/compare?first=V24-002&second=xx");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.field("first")).isEqualTo("V24-002");
        assertThat(answer.field("second")).isEqualTo("xx");
        assertThat(answer.text()).contains("id=\"second-problem\"").doesNotContain("id=\"first-problem\"");
        assertThat(answer.words()).contains("There is no piece “xx” in this archive.");

        Answer state = client.get("/compare?first=V24-002+state+one&second=V24-002");
        assertThat(state.status()).isEqualTo(400);
        assertThat(state.field("first")).isEqualTo("V24-002 state one");
        assertThat(state.words()).contains("“V24-002 state one” is no state.");
        assertThat(client.get("/compare?first=v24-002&second=V24-002").status()).isEqualTo(200);
    }
}
