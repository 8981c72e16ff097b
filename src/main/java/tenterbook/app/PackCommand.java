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
import tenterbook.exchange.Bag;
import tenterbook.exchange.Pack;
import tenterbook.words.Message;

@Command(name = "pack", mixinStandardHelpOptions = true)
final class PackCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--to", required = true, paramLabel = "BAG")
    private Path to;

    @Option(names = "--read-only")
    private boolean readOnly;

    @Override
    public Integer call() {
        Bag bag;
        try (Archive archive = readOnly ? folder.reading(Clock.systemUTC()) : folder.writableOrNot(Clock.systemUTC());
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            bag = new Pack(Clock.systemUTC()).pack(archive, to, terminal);
        }
        bag.notes().forEach(spec.commandLine().getOut()::println);
        spec.commandLine()
                .getOut()
                .println(Message.of(
                        "command.packed", "folder", to.toAbsolutePath().normalize()));
        return 0;
    }
}
