package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import tenterbook.app.Wiring;
import tenterbook.exchange.RestoredSample;
import tenterbook.measure.Digest;

/** The sample archive served on a free port. */
final class SampleStudio implements AutoCloseable {
    private static SampleStudio readOnly;

    private final Wiring wiring;

    private SampleStudio(Wiring wiring) {
        this.wiring = wiring;
    }

    /** A copy of its own, for tests that write. */
    static SampleStudio open(Path empty, Clock clock) {
        Path folder = empty.resolve("studio");
        RestoredSample.copyTo(folder);
        return new SampleStudio(Wiring.serve(folder, 0, clock));
    }

    /** The same, of which one photograph was not looked at yet for what is on it. */
    static SampleStudio openUnseen(Path empty, Digest photo, Clock clock) throws SQLException {
        Path folder = empty.resolve("studio");
        RestoredSample.copyTo(folder);
        try (var features = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("derived/features.db"));
                var forget = features.createStatement()) {
            assertThat(forget.executeUpdate("DELETE FROM features WHERE photo = '" + photo.hex() + "'"))
                    .isOne();
        }
        return new SampleStudio(Wiring.serve(folder, 0, clock));
    }

    /** The same for every test of this process that only reads; it stays open until the process ends. */
    static synchronized SampleStudio readOnly() {
        if (readOnly == null) {
            try {
                readOnly = open(RestoredSample.temporaryFolder(), Clock.systemUTC());
            } catch (IOException e) {
                throw new UncheckedIOException("making a folder for the sample archive", e);
            }
        }
        return readOnly;
    }

    String at(String path) {
        return wiring.address() + path;
    }

    Wiring wiring() {
        return wiring;
    }

    @Override
    public void close() {
        wiring.close();
    }
}
