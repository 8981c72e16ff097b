package tenterbook.app;

import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.labelling.issue.TagTable;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;
import tenterbook.words.Message;

@Command(name = "reindex", mixinStandardHelpOptions = true)
final class ReindexCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Override
    public Integer call() {
        try (Archive archive = folder.existing(Clock.systemUTC());
                TagTable tags = TagTable.open(archive);
                PieceIndex index = PieceIndex.open(archive, new TagFacet(tags));
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            tags.rebuild(terminal);
            index.reindex(terminal);
        }
        spec.commandLine().getOut().println(Message.of("command.reindexed"));
        return 0;
    }
}
