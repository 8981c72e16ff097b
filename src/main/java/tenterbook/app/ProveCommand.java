package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.PieceProof;
import tenterbook.exchange.PieceProof.Include;
import tenterbook.words.Message;

@Command(name = "prove", mixinStandardHelpOptions = true)
final class ProveCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--piece", required = true, paramLabel = "NUMBER")
    private String piece;

    @Option(names = "--to", required = true, paramLabel = "FILE")
    private Path to;

    @Option(names = "--made")
    private boolean made;

    @Option(names = "--private")
    private boolean confidential;

    @Override
    public Integer call() {
        try (Archive archive = folder.existing(Clock.systemUTC());
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            Set<Include> include = EnumSet.noneOf(Include.class);
            if (made) {
                include.add(Include.CLAMPINGS);
            }
            if (confidential) {
                include.add(Include.PRIVATE_PARTS);
            }
            new PieceProof(archive, terminal).write(piece, include, to);
        }
        spec.commandLine()
                .getOut()
                .println(Message.of(confidential ? "command.prove.wrote-private" : "command.prove.wrote", "file", to));
        return 0;
    }
}
