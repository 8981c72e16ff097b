package tenterbook.app;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tenterbook.exchange.Restore;
import tenterbook.exchange.Restored;
import tenterbook.exchange.backup.EncryptedFolder;
import tenterbook.exchange.backup.EncryptedRestore;
import tenterbook.words.Message;

@Command(name = "restore", mixinStandardHelpOptions = true)
final class RestoreCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--from", required = true, paramLabel = "BAG")
    private Path from;

    @Mixin
    private ArchiveOption folder;

    @Mixin
    private PassphraseOption passphrase;

    @Override
    public Integer call() throws IOException {
        Optional<EncryptedFolder.Generation> encrypted = EncryptedFolder.generation(from);
        Clock clock = Clock.systemUTC();
        Restored restored;
        try (Terminal terminal = new Terminal(spec.commandLine().getOut())) {
            restored = encrypted.isPresent()
                    ? new EncryptedRestore(clock).restore(encrypted.get(), folder.folder, passphrase, terminal)
                    : new Restore(clock).restore(from, folder.folder, terminal);
        }
        restored.notes().forEach(spec.commandLine().getOut()::println);
        spec.commandLine()
                .getOut()
                .println(Message.of(
                        "command.restored",
                        "place",
                        folder.folder.toAbsolutePath().normalize(),
                        "folder",
                        folder.folder));
        return 0;
    }
}
