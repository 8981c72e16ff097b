package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.archive.Archive;
import tenterbook.exchange.backup.ArchiveKey;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.backup.BackupNote;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

@Command(name = "backup", mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private ArchiveOption folder;

    @Mixin
    private PassphraseOption passphrase;

    @Option(names = "--to", paramLabel = "FOLDER")
    private @Nullable Path to;

    @Option(names = "--encrypt")
    private boolean encrypt;

    @Option(names = "--trial", arity = "0..1", fallbackValue = Backup.NEWEST, paramLabel = "WHICH")
    private @Nullable String trial;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        Path target = target();
        List<Finding> findings = new ArrayList<>();
        try (Archive archive = folder.beside(Clock.systemUTC());
                Terminal terminal = new Terminal(out)) {
            Backup backup = new Backup(target, Clock.systemUTC());
            if (trial != null) {
                backup.mustBeTriable(archive, trial, encrypt, passphrase);
            }
            if (encrypt) {
                ArchiveKey.choose(folder.folder, passphrase.chosen(), Instant.now());
                terminal.say(Message.of("command.backup.encrypted"));
            }
            Backup.Made made = backup.make(archive, terminal);
            findings.addAll(made.findings());
            terminal.say(made.summary());
            if (trial != null && findings.isEmpty()) {
                Backup.Tried tried = backup.trial(archive, trial, passphrase, terminal);
                findings.addAll(tried.findings());
                terminal.say(tried.summary());
            }
        }
        Finding.listed(findings).forEach(line -> out.println(line.inEnglish()));
        return findings.isEmpty() ? 0 : Main.FOUND_WRONG;
    }

    private Path target() {
        if (to != null) {
            return to;
        }
        String chosen = BackupNote.in(folder.folder).folder();
        if (chosen.isEmpty()) {
            throw Refusal.of("backup.no-folder");
        }
        return Path.of(chosen);
    }
}
