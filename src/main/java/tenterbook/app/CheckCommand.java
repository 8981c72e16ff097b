package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.BagVerification;
import tenterbook.exchange.backup.EncryptedCheck;
import tenterbook.exchange.backup.EncryptedFolder;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.LedgerFile;
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

    @Option(names = "--accept-older")
    private boolean acceptOlder;

    @Option(names = "--read-only")
    private boolean readOnly;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        Optional<EncryptedFolder.Generation> encrypted = EncryptedFolder.generation(folder.folder);
        if (encrypted.isPresent()) {
            return encrypted(encrypted.get(), out);
        }
        Optional<Path> bag = LedgerFile.bagAround(BackupFolder.bagIn(folder.folder));
        if (bag.isPresent()) {
            return bag(bag.get(), out);
        }
        List<Finding> findings = new ArrayList<>();
        try (Archive archive = readOnly ? folder.reading(Clock.systemUTC()) : folder.writableOrNot(Clock.systemUTC())) {
            if (acceptOlder && archive.ledger().behind().isPresent()) {
                archive.ledger().acceptAsLast();
                out.println(Message.of(
                        "command.check.accepted", "sequence", archive.ledger().lastSequence()));
            }
            try (Terminal terminal = new Terminal(out)) {
                findings.addAll(ArchiveCheck.run(archive, terminal, () -> index(archive, terminal)));
            }
            if (archive.folder().readOnly()) {
                out.println(Message.of("command.check.read-only", "folder", folder.folder));
            }
            if (erased) {
                archive.ledger().check().notCheckable().forEach(out::println);
            }
            Finding.listed(findings).forEach(line -> out.println(line.inEnglish()));
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

    /** Whether the files of an encrypted backup are as they were written, and that no more was looked at. */
    private static int encrypted(EncryptedFolder.Generation generation, PrintWriter out) throws IOException {
        EncryptedCheck.Result result;
        try (Terminal terminal = new Terminal(out)) {
            result = EncryptedCheck.run(generation, terminal);
        }
        List<Finding> findings = result.findings();
        Path backup = generation.folder().root();
        findings.forEach(out::println);
        out.println(
                findings.isEmpty()
                        ? Message.of("command.check.encrypted-whole", "backup", backup, "count", result.files())
                        : Message.of("command.check.encrypted-wrong", "backup", backup, "count", findings.size()));
        return findings.isEmpty() ? 0 : Main.FOUND_WRONG;
    }

    /** Whether the bag could be restored. */
    private static int bag(Path bag, PrintWriter out) throws IOException {
        List<Finding> findings;
        try (Terminal terminal = new Terminal(out)) {
            findings = BagVerification.kept(bag, Clock.systemUTC(), terminal);
        }
        findings.forEach(out::println);
        out.println(
                findings.isEmpty()
                        ? Message.of("command.check.bag-whole", "bag", bag)
                        : Message.of("command.check.bag-wrong", "bag", bag, "count", findings.size()));
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
            return List.of(new Finding("index", Message.of("command.check.index", "why", e.explanation()))
                    .meaning(Consequence.DERIVED));
        }
    }
}
