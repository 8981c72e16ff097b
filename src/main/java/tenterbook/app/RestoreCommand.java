package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.exchange.Restore;

@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description =
                "Restores an archive from a bag into a folder that is missing or empty. An incomplete or tampered bag is refused and leaves nothing.")
final class RestoreCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--from", required = true, paramLabel = "BAG", description = "The bag's folder.")
    private Path from;

    @Mixin
    private ArchiveOption folder;

    @Override
    public Integer call() {
        try (Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            new Restore(Clock.systemUTC()).restore(from, folder.folder, terminal);
        }
        spec.commandLine()
                .getOut()
                .println("Restored into " + folder.folder.toAbsolutePath().normalize()
                        + ". Serve it with: serve --archive " + folder.folder);
        return 0;
    }
}
