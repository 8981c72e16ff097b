package tenterbook.app;

import java.io.PrintWriter;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;
import tenterbook.words.Message;

@Command(name = "check", mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Option(names = "--erased")
    private boolean erased;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        List<Finding> findings = new ArrayList<>();
        try (Archive archive = folder.toCheck(Clock.systemUTC())) {
            try (Terminal terminal = new Terminal(out)) {
                findings.addAll(ArchiveCheck.run(archive, terminal));
                if (!archive.folder().readOnly()) {
                    findings.addAll(index(archive, terminal));
                }
            }
            if (archive.folder().readOnly()) {
                out.println(Message.of("command.check.read-only", "folder", folder.folder));
            }
            if (erased) {
                archive.ledger().check().notCheckable().forEach(out::println);
            }
            findings.forEach(out::println);
            out.println(
                    findings.isEmpty()
                            ? Message.of(
                                    "command.check.whole",
                                    "count",
                                    archive.ledger().lastSequence(),
                                    "hash",
                                    archive.ledger().lastHash())
                            : Message.of("command.check.wrong", "count", findings.size()));
            out.flush();
        }
        return findings.isEmpty() ? 0 : Main.FOUND_WRONG;
    }

    /** An index that cannot be opened is a finding: what was found before must still be shown. */
    private static List<Finding> index(Archive archive, Terminal terminal) {
        try (TagTable tags = TagTable.open(archive);
                PieceIndex index = PieceIndex.open(archive, new TagFacet(tags))) {
            List<Finding> findings = new ArrayList<>(tags.check(terminal));
            findings.addAll(index.check(terminal));
            return findings;
        } catch (ArchiveProblem e) {
            return List.of(new Finding("index", Message.of("command.check.index", "why", e.explanation())));
        }
    }
}
