package tenterbook.app;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Where the passphrase of encrypted backups comes from: a file, or the terminal; never an argument, which other programs can see. */
final class PassphraseOption implements Supplier<Passphrase> {
    @Option(names = "--passphrase-file", paramLabel = "FILE")
    private @Nullable Path file;

    @Override
    public Passphrase get() {
        return file == null ? typed() : read(file);
    }

    /** Without the line break that an editor adds. */
    private static Passphrase read(Path file) {
        try {
            return Passphrase.of(Files.readString(file).replaceFirst("\\R\\z", ""));
        } catch (IOException e) {
            throw Refusal.of("command.passphrase.no-file", "file", file, "why", e.toString());
        }
    }

    private static Passphrase typed() {
        Console console = System.console();
        char[] typed = console == null
                ? null
                : console.readPassword(
                        "%s ", Message.of("command.passphrase.ask").inEnglish());
        if (typed == null) {
            throw Refusal.of("command.passphrase.no-terminal");
        }
        return Passphrase.of(new String(typed));
    }
}
