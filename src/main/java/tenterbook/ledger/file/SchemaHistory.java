package tenterbook.ledger.file;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.zip.CRC32;
import javax.sql.DataSource;

/**
 * Flyway's table of the migrations that were applied, read without Flyway, whose start takes a fifth of a second. Whatever differs
 * from this program's migrations is left to Flyway, which then migrates or refuses.
 */
final class SchemaHistory {
    /** This program's migrations in order, as Flyway finds them. */
    static final List<String> SCRIPTS = List.of(
            "V1__ledger.sql",
            "V2__views.sql",
            "V3__revisions_in_order.sql",
            "V4__examinations.sql",
            "V5__format_2.sql",
            "V6__remains_of_erasures.sql",
            "V7__counts_and_latest.sql",
            "V8__saved_searches.sql",
            "V9__own_words.sql",
            "V10__agreements.sql",
            "V11__later_numbers_and_editions.sql");

    private SchemaHistory() {}

    /** Whether exactly this program's migrations were applied, each once, in order and unchanged since; false where it cannot be read. */
    static boolean isOurs(DataSource source) {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT version, description, type, script, checksum, success FROM flyway_schema_history ORDER BY installed_rank")) {
            int applied = 0;
            while (row.next()) {
                if (applied == SCRIPTS.size() || !same(row, applied + 1, SCRIPTS.get(applied))) {
                    return false;
                }
                applied++;
            }
            return applied == SCRIPTS.size();
        } catch (IOException | SQLException e) {
            return false;
        }
    }

    private static boolean same(ResultSet row, int version, String script) throws SQLException, IOException {
        String description = script.substring(script.indexOf("__") + 2, script.lastIndexOf('.'))
                .replace('_', ' ');
        return script.equals(row.getString("script"))
                && Integer.toString(version).equals(row.getString("version"))
                && description.equals(row.getString("description"))
                && "SQL".equals(row.getString("type"))
                && row.getInt("success") == 1
                && row.getObject("checksum") instanceof Integer checksum
                && checksum == checksum(script);
    }

    /** As Flyway computes it: the CRC-32 of the script's lines without their ends. */
    private static int checksum(String script) throws IOException {
        CRC32 sum = new CRC32();
        read(script).lines().forEach(line -> sum.update(line.getBytes(StandardCharsets.UTF_8)));
        return (int) sum.getValue();
    }

    private static String read(String script) throws IOException {
        try (InputStream file = SchemaHistory.class.getResourceAsStream("/db/migration/" + script)) {
            if (file == null) {
                throw new FileNotFoundException(script);
            }
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Makes the tables of a ledger in an empty database, without the history. */
    static void make(Connection empty) throws SQLException {
        try (Statement statement = empty.createStatement()) {
            for (String script : SCRIPTS) {
                statement.executeUpdate(read(script));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
