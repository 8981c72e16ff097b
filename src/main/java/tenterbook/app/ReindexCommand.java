package tenterbook.app;

import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.search.PieceIndex;

@Command(
        name = "reindex",
        mixinStandardHelpOptions = true,
        description = "Builds the search index anew from the ledger.")
final class ReindexCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Override
    public Integer call() {
        try (Archive archive = folder.existing(Clock.systemUTC());
                PieceIndex index = PieceIndex.open(archive);
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            index.reindex(terminal);
        }
        spec.commandLine().getOut().println("The search index is built anew.");
        return 0;
    }
}
