package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.measure.OwnTable;

/** The list of rules, one click from where a rule shows. */
class RulePagesTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
    }

    @Test
    void everyRuleStandsOnAPageWithItsPassageAndStatus() throws IOException {
        assertThat(client.get("/print?market=eu").text()).contains("href=\"/print/rules#eu\"");
        Answer rules = client.get("/print/rules");
        assertThat(rules.status()).isEqualTo(200);
        assertThat(rules.text()).contains("id=\"eu\"", "from memory: verify", "shall not be used for other fibres");
        assertThat(OwnTable.rows("/label/rules.csv"))
                .allSatisfy(row -> assertThat(rules.text()).contains(">" + row.get("rule") + "<"));
    }
}
