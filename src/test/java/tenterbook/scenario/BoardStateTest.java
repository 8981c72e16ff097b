package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;

/** A state of a board from which something was made stays, under its name. */
class BoardStateTest extends Scenario {
    @Test
    void aStateInUseIsNeitherTakenAwayNorRenamedInTheForm() throws IOException {
        clamping();

        Answer renamed = client.post(
                "/boards/B01/edit", "version", "1", "image", "Fig and wasp", "wood", "pear", "states.0.name", "A");
        assertThat(renamed.status()).isEqualTo(409);
        assertThat(renamed.words())
                .contains("“I” of the board-pair B01 cannot be taken away or renamed: clamping C24-001 uses it")
                .contains("nothing was changed");
        assertThat(renamed.field("states.0.name")).as("what was typed").isEqualTo("A");
        assertThat(wiring.archive().board("B01").orElseThrow().state("I")).isPresent();

        saved("/boards/B01/edit", "version", "1", "image", "Fig and wasp", "states.0.name", "I", "states.1.name", "II");
        saved("/boards/B01/edit", "version", "2", "image", "Fig and wasp", "states.0.name", "I");
        assertThat(wiring.archive().board("B01").orElseThrow().states())
                .as("one that nothing uses may go")
                .hasSize(1);
    }

    @Test
    void aStateInUseIsNotTakenAwayThroughTheInterface() throws IOException {
        clamping();

        Answer answer = client.send(
                "PUT",
                "/api/boards/B01",
                "{\"image\":\"Fig and wasp\",\"states\":[{\"name\":\"II\"}]}".getBytes(),
                "Content-Type",
                "application/json",
                "If-Match",
                "\"1\"");
        assertThat(answer.status()).as(answer.text()).isEqualTo(409);
        assertThat(answer.text()).contains("clamping C24-001 uses it");
    }

    @Test
    void aClampingNamesNoStateThatItsBoardLacks() throws IOException {
        clamping();
        Answer answer = client.post("/clampings", "id", "C24-002", "title", "figs", "boards.0.use", "B01/V");
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.words()).contains("names “V” of the board-pair B01, which has nothing of that name");
    }

    @Test
    void theCheckReportsAStateThatItsBoardLacks() throws Exception {
        clamping();
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED)).isEmpty();

        try (var connection = DriverManager.getConnection(
                        "jdbc:sqlite:" + wiring.archive().folder().ledger());
                var statement = connection.createStatement()) {
            statement.execute("DELETE FROM reference WHERE to_kind = 'board-pair'");
        }
        wiring.archive().ledger().write("maker", act -> {
            var board = wiring.archive().board("B01").orElseThrow();
            return act.save(
                    Kinds.BOARD_PAIR,
                    new tenterbook.board.BoardPair(
                            board.id(),
                            board.image(),
                            board.wood(),
                            board.length(),
                            board.width(),
                            board.thickness(),
                            board.usualLayers(),
                            board.kept(),
                            java.util.List.of(new tenterbook.board.BoardState("II", null, null, null, null, null)),
                            board.notes()),
                    1,
                    "");
        });
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED))
                .extracting(Finding::toString)
                .anyMatch(line -> line.contains("clamping C24-001")
                        && line.contains("names “I” of the board-pair B01, which has nothing of that name"));
    }
}
