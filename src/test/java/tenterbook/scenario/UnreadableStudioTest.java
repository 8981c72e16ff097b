package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Joined;

/** A record of the studio that another program spoilt: every page but those that need it is shown, and says so. */
class UnreadableStudioTest extends Scenario {
    @SuppressWarnings("rawtypes")
    private static final Kind<Map> RAW = new Kind<>(
            Kinds.STUDIO.name(),
            Joined.with("", "studio"),
            new MappedCodec<>(new ObjectMapper(), Map.class),
            studio -> Kinds.THE_STUDIO,
            studio -> List.of());

    @BeforeEach
    void spoil() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Figueira", "category", "scarf", "made.0.clamping", "C24-001");
        wiring.archive().ledger().write("someone", act -> act.save(RAW, Map.of("name", List.of(5)), 1, ""));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/colours",
                "/boards",
                "/clampings",
                "/clampings/C24-001",
                "/materials",
                "/people",
                "/verify",
                "/pieces/V24-001",
                "/history/piece/V24-001",
                "/history/studio/studio"
            })
    void aPageThatNeedsItNotIsShownAndSaysWhatIsMissing(String path) throws IOException {
        Answer answer = client.get(path);
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.words()).contains("The record of the studio cannot be read");
        assertThat(answer.text()).contains("/history/studio/studio");
    }

    @Test
    void whatNeedsItIsRefusedWithTheReason() throws IOException {
        Answer answer = client.get("/pieces/new");
        assertThat(answer.status()).isEqualTo(500);
        assertThat(answer.words()).contains("cannot be read as a studio", "still in the ledger");
    }

    @Test
    void anEarlierVersionIsBroughtBack() throws IOException {
        saved("/history/studio/studio/bring-back", "version", "1");
        assertThat(client.get("/").words()).doesNotContain("cannot be read").contains("Oficina Valderim");
    }
}
