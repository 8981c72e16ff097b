package tenterbook.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.app.open.RunningAddress;
import tenterbook.app.start.FreePort;
import tenterbook.app.start.StopSignal;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.web.device.StudioNetwork;
import tenterbook.words.Message;

@Command(name = "serve", mixinStandardHelpOptions = true)
final class ServeCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption archive;

    @Option(names = "--port", paramLabel = "N", defaultValue = FreePort.USUAL)
    private int port;

    @Option(names = "--sample")
    private boolean sample;

    @Option(names = "--read-only")
    private boolean readOnly;

    @Option(names = "--studio-network")
    private boolean studioNetwork;

    @Option(names = "--network-port", paramLabel = "N", defaultValue = "" + StudioNetwork.USUAL_PORT)
    private int networkPort;

    @Override
    public Integer call() throws Exception {
        PrintWriter out = spec.commandLine().getOut();
        boolean named = spec.commandLine().getParseResult().hasMatchedOption("--archive");
        if (!readOnly && (sample || !named) && LedgerFile.in(archive.folder).folderUnused()) {
            restoreSample(out);
        }
        int free = FreePort.from(port, out);
        try (StopSignal stop = new StopSignal();
                Wiring wiring = serve(free, Clock.systemDefaultZone())) {
            out.println(Message.of(
                    readOnly ? "command.serve.serves-read-only" : "command.serve.serves",
                    "folder",
                    archive.folder.toAbsolutePath().normalize()));
            out.println(Message.of("command.serve.open", "address", wiring.address()));
            if (studioNetwork) {
                wiring.network().openEncrypted(networkPort);
                out.println(Message.of(
                        "command.serve.network",
                        "address",
                        wiring.network().urls().get(0)));
            }
            out.flush();
            RunningAddress running = RunningAddress.in(archive.folder);
            if (!readOnly) {
                running.note(wiring.port());
            }
            stop.await();
            if (!readOnly) {
                running.forget();
            }
        }
        return 0;
    }

    private Wiring serve(int free, Clock clock) {
        return readOnly ? Wiring.serve(archive.reading(clock), free) : Wiring.serve(archive.folder, free, clock);
    }

    private void restoreSample(PrintWriter out) {
        Path bag = SampleBag.find().orElseThrow(SampleBag::missing);
        out.println(Message.of(
                "command.serve.first", "folder", archive.folder.toAbsolutePath().normalize()));
        out.flush();
        try (Terminal terminal = new Terminal(out)) {
            new Restore(Clock.systemUTC()).restore(bag, archive.folder, terminal);
        }
    }
}
