package tenterbook.ledger;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Joined;

/** Two small kinds of record for the ledger's tests: boards, and cloths that name boards. */
final class Things {
    static final ObjectMapper JSON = JsonMapper.builder().build();
    static final Clock CLOCK = Clock.fixed(Instant.parse("2024-03-05T10:15:00.123456Z"), ZoneOffset.UTC);

    /** Kept under the name of a real kind, so that the views show it. */
    record Board(String id, String image) {}

    record Print(String id, List<String> boards) {}

    static final Kind<Board> BOARD = new Kind<>(
            "board-pair",
            Joined.with("", "board pair"),
            new MappedCodec<>(JSON, Board.class),
            Board::id,
            board -> List.of());
    static final Kind<Print> PRINT = new Kind<>(
            "print",
            Joined.with("", "print"),
            new MappedCodec<>(JSON, Print.class),
            Print::id,
            print -> print.boards().stream().map(BOARD::key).toList());

    private Things() {}

    /** An open ledger in a held folder. */
    static final class Opened implements AutoCloseable {
        private final ArchiveFolder folder;
        final Ledger ledger;

        Opened(Path root) {
            folder = ArchiveFolder.hold(root);
            try {
                ledger = Ledger.open(folder, CLOCK, List.of(BOARD, PRINT));
            } catch (RuntimeException e) {
                folder.close();
                throw e;
            }
        }

        Saved<Board> board(String id, String image) {
            return ledger.write("test", act -> act.create(BOARD, new Board(id, image)));
        }

        Saved<Print> print(String id, String... boards) {
            return ledger.write("test", act -> act.create(PRINT, new Print(id, List.of(boards))));
        }

        List<Finding> check() {
            return ledger.check().run(Progress.UNWATCHED);
        }

        @Override
        public void close() {
            ledger.close();
            folder.close();
        }
    }

    /** SQL by somebody else's hand, past everything the program promises. */
    static void byHand(Path root, String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + root.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }
}
