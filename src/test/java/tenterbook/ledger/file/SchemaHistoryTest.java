package tenterbook.ledger.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.stream.Stream;
import org.flywaydb.core.api.MigrationInfo;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.SQLiteDataSource;

/** Compared with what Flyway itself wrote. */
class SchemaHistoryTest {
    @TempDir
    Path root;

    private final SQLiteDataSource source = new SQLiteDataSource();
    private Path file;

    @BeforeEach
    void migrated() {
        file = root.resolve("ledger.db");
        source.setUrl("jdbc:sqlite:" + file);
        Database.flyway(source).migrate();
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(source.getUrl());
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void whatFlywayHasMigratedToTheEndIsOurs() {
        assertThat(SchemaHistory.isOurs(source)).isTrue();
    }

    @Test
    void theScriptsAreThoseThatFlywayFindsAndMakeTheSameSchema() throws SQLException {
        assertThat(SchemaHistory.SCRIPTS)
                .hasSize(OlderLedgers.SCHEMA)
                .containsExactly(Stream.of(Database.flyway(source).info().all())
                        .map(MigrationInfo::getScript)
                        .toArray(String[]::new));
        try (Connection connection = source.getConnection()) {
            assertThat(SchemaCheck.schema(connection)).isNotEmpty().isEqualTo(SchemaCheck.migrated());
        }
    }

    @Test
    void withoutATableNothingIsOurs() throws SQLException {
        execute("DROP TABLE flyway_schema_history");
        assertThat(SchemaHistory.isOurs(source)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE flyway_schema_history SET checksum = checksum + 1 WHERE version = '3'",
                "UPDATE flyway_schema_history SET checksum = NULL WHERE version = '3'",
                "UPDATE flyway_schema_history SET success = 0 WHERE version = '11'",
                "UPDATE flyway_schema_history SET description = 'other' WHERE version = '2'",
                "UPDATE flyway_schema_history SET script = '../' || script WHERE version = '2'",
                "UPDATE flyway_schema_history SET type = 'BASELINE' WHERE version = '1'",
                "DELETE FROM flyway_schema_history WHERE version = '11'",
                "DELETE FROM flyway_schema_history WHERE version = '5'",
                "INSERT INTO flyway_schema_history SELECT installed_rank + 1, '12', 'next', type, 'V12__next.sql', 1,"
                        + " installed_by, installed_on, execution_time, success FROM flyway_schema_history WHERE version = '11'"
            })
    void whatDiffersInAnythingIsLeftToFlyway(String change) throws SQLException {
        execute(change);
        assertThat(SchemaHistory.isOurs(source)).isFalse();
    }

    @Test
    void aMigrationThatWasChangedIsRefusedAsFlywayRefusesIt() throws SQLException {
        execute("UPDATE flyway_schema_history SET checksum = checksum + 1 WHERE version = '3'");
        assertThatThrownBy(() -> new Database(file).close())
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageContaining("ledger.db");
    }
}
