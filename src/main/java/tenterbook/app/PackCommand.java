package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.Pack;

@Command(
        name = "pack",
        mixinStandardHelpOptions = true,
        description =
                "Packs the whole archive, private particulars too, into a BagIt 1.0 bag (RFC 8493) that opens without this program.")
final class PackCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--to", required = true, paramLabel = "BAG", description = "Folder to make; must not exist yet.")
    private Path to;

    @Override
    public Integer call() {
        try (Archive archive = folder.existing(Clock.systemUTC());
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            new Pack(Clock.systemUTC()).pack(archive, to, terminal);
        }
        spec.commandLine()
                .getOut()
                .println("Packed into " + to.toAbsolutePath().normalize()
                        + ". It holds everything, private names and addresses too.");
        return 0;
    }
}
