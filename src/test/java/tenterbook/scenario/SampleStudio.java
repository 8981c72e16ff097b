package tenterbook.scenario;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import tenterbook.app.Wiring;
import tenterbook.exchange.RestoredSample;

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

    /** The same, whose photographs were not looked at yet for what is on them. */
    static SampleStudio openUnseen(Path empty, Clock clock) throws IOException {
        Path folder = empty.resolve("studio");
        RestoredSample.copyTo(folder);
        Files.delete(folder.resolve("derived/features.db"));
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
