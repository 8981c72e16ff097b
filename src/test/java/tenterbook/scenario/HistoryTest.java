package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Joined;

/** The page of a record's versions, where some of them are damaged or were spoilt by another program. */
class HistoryTest extends Scenario {
    @SuppressWarnings("rawtypes")
    private static final Kind<Map> RAW = new Kind<>(
            Kinds.PIECE.name(),
            Joined.with("", "piece"),
            new MappedCodec<>(new ObjectMapper(), Map.class),
            piece -> (String) piece.get("number"),
            piece -> List.of());

    private void raw(Map<String, Object> piece, int version) {
        wiring.archive().ledger().write("someone", act -> act.save(RAW, piece, version, ""));
    }

    @Test
    void aVersionThatCannotBeReadIsShownAsSuchAndTheOthersAsUsual() throws IOException, SQLException {
        studio();
        saved("/pieces", "number", "V24-001", "title", "Figueira");
        saved("/pieces/V24-001/edit", "number", "V24-001", "title", "Salgueiro", "version", "1");
        raw(Map.of("number", "V24-001", "photos", Map.of("x", 1)), 2);
        raw(Map.of("number", "V24-001", "title", "Freixo"), 3);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + around.resolve("studio/ledger.db"));
                var statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("UPDATE revisions SET record = '[1]' WHERE kind = 'piece' AND version = 1");
        }
        Answer page = client.get("/history/piece/V24-001");
        assertThat(page.status()).as(page.words()).isEqualTo(200);
        assertThat(page.words())
                .contains("Version 1", "Version 2", "Version 3", "Version 4", "Salgueiro", "Freixo")
                .contains("This version cannot be read")
                .containsPattern("Version 4 as it stands");
        assertThat(page.text().split("This version cannot be read", -1)).hasSize(3);
    }
}
