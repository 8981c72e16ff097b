package tenterbook.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.web.device.StudioNetwork;
import tenterbook.web.server.Server;
import tenterbook.words.Message;

@Command(name = "serve", mixinStandardHelpOptions = true)
final class ServeCommand implements Callable<Integer> {
    private static final int PORTS_TRIED = 20;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption archive;

    @Option(names = "--port", paramLabel = "N", defaultValue = "7117")
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
        int free = freePort(out);
        CountDownLatch stopped = new CountDownLatch(1);
        try (Wiring wiring = serve(free, Clock.systemDefaultZone())) {
            Thread main = Thread.currentThread();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                stopped.countDown();
                try {
                    main.join(5000);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }));
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
            stopped.await();
        }
        return 0;
    }

    private Wiring serve(int free, Clock clock) {
        return readOnly ? Wiring.serve(archive.reading(clock), free) : Wiring.serve(archive.folder, free, clock);
    }

    private void restoreSample(PrintWriter out) {
        Path bag = SampleBag.find()
                .orElseThrow(() -> new ArchiveProblem(Message.of(
                        "command.serve.no-sample", "folder", Path.of("").toAbsolutePath())));
        out.println(Message.of(
                "command.serve.first", "folder", archive.folder.toAbsolutePath().normalize()));
        out.flush();
        try (Terminal terminal = new Terminal(out)) {
            new Restore(Clock.systemUTC()).restore(bag, archive.folder, terminal);
        }
    }

    private int freePort(PrintWriter out) {
        if (port == 0) {
            return 0;
        }
        for (int tried = port; tried < port + PORTS_TRIED && tried <= 65_535; tried++) {
            if (Server.free(tried)) {
                if (tried != port) {
                    out.println(Message.of("command.serve.port-busy", "port", port, "other", tried));
                }
                return tried;
            }
        }
        throw new ArchiveProblem(Message.of("command.serve.no-port", "first", port, "last", port + PORTS_TRIED - 1));
    }
}
