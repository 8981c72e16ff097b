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
import tenterbook.exchange.PieceProof;

@Command(
        name = "prove",
        mixinStandardHelpOptions = true,
        description =
                "Writes one piece's history to a file that a stranger can check with ‘verify’ or any SHA-256 tool. It holds no buyer, price or note unless chosen. Of every other revision it holds digests and, from format 2 on, the kind of record, the version and the time of saving.")
final class ProveCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--piece", required = true, paramLabel = "NUMBER", description = "Number of the piece.")
    private String piece;

    @Option(names = "--to", required = true, paramLabel = "FILE", description = "File to write; must not exist yet.")
    private Path to;

    @Option(names = "--made", description = "Show its clampings too, with their boards and cloths.")
    private boolean made;

    @Option(
            names = "--private",
            description = "Show the private parts too: holders, places, prices, notes, and who saved it.")
    private boolean confidential;

    @Override
    public Integer call() {
        try (Archive archive = folder.existing(Clock.systemUTC());
                Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            new PieceProof(archive, terminal).write(piece, made, confidential, to);
        }
        spec.commandLine()
                .getOut()
                .println("Wrote %s. Anyone can check it with: verify %s%s"
                        .formatted(
                                to,
                                to,
                                confidential ? ". It holds private names and prices; mind to whom you give it." : ""));
        return 0;
    }
}
