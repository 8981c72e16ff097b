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
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.LedgerFile;
import tenterbook.web.Server;

@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = {
            "Serves an archive to this computer's browser.",
            "Without --archive, the folder 'archive' is used, and filled with the sample archive if it is missing. With --archive and a missing folder, an empty archive is begun there."
        })
final class ServeCommand implements Callable<Integer> {
    private static final int PORTS_TRIED = 20;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption archive;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "7117",
            description = "Port (default: ${DEFAULT-VALUE}).")
    private int port;

    @Option(names = "--sample", description = "Fill a missing --archive folder with the sample archive.")
    private boolean sample;

    @Override
    public Integer call() throws Exception {
        PrintWriter out = spec.commandLine().getOut();
        boolean named = spec.commandLine().getParseResult().hasMatchedOption("--archive");
        if ((sample || !named) && LedgerFile.in(archive.folder).folderUnused()) {
            restoreSample(out);
        }
        int free = freePort(out);
        CountDownLatch stopped = new CountDownLatch(1);
        try (Wiring wiring = Wiring.serve(archive.folder, free, Clock.systemDefaultZone())) {
            Thread main = Thread.currentThread();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                stopped.countDown();
                try {
                    main.join(5000);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }));
            out.println("Tenterbook serves " + archive.folder.toAbsolutePath().normalize());
            out.println("Open " + wiring.address() + " in a browser. Ctrl-C ends it.");
            out.flush();
            stopped.await();
        }
        return 0;
    }

    private void restoreSample(PrintWriter out) {
        Path bag = SampleBag.find()
                .orElseThrow(() -> new ArchiveProblem(
                        "The sample archive is not here: expected a folder ‘sample-archive’ in %s or beside the program. Go to the project's folder, or begin an archive of your own with --archive DIR."
                                .formatted(Path.of("").toAbsolutePath())));
        out.println("First start: restoring the sample archive into "
                + archive.folder.toAbsolutePath().normalize());
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
                    out.printf(
                            "Port %d is busy: something else on this computer uses it. Using %d instead.%n",
                            port, tried);
                }
                return tried;
            }
        }
        throw new ArchiveProblem(
                "No port from %d to %d is free on this computer. End one of the programs that use them, or give another with --port."
                        .formatted(port, port + PORTS_TRIED - 1));
    }
}
