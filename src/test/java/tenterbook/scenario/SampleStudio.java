package tenterbook.scenario;

import java.nio.file.Path;
import java.time.Clock;
import tenterbook.app.Wiring;
import tenterbook.exchange.Restore;
import tenterbook.ledger.Progress;

/** The sample archive, restored from its bag and served on a free port. */
final class SampleStudio implements AutoCloseable {
    private final Wiring wiring;

    private SampleStudio(Wiring wiring) {
        this.wiring = wiring;
    }

    static SampleStudio open(Path empty, Clock clock) {
        Path folder = empty.resolve("studio");
        new Restore(clock).restore(Path.of("sample-archive").toAbsolutePath(), folder, Progress.UNWATCHED);
        return new SampleStudio(Wiring.serve(folder, 0, clock));
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
