package tenterbook.app;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Where the passphrase of encrypted backups comes from: a file, the standard input, or the terminal; never an argument, which other
 * programs can see. It is asked for once.
 */
final class PassphraseOption implements Supplier<Passphrase> {
    private static final Path STANDARD_INPUT = Path.of("-");

    @Option(names = "--passphrase-file", paramLabel = "FILE")
    private @Nullable Path file;

    private @Nullable Passphrase known;

    /** @throws Refusal where none is given */
    @Override
    public Passphrase get() {
        if (known == null) {
            String words = file == null ? typed("command.passphrase.ask") : read(file);
            if (words.isEmpty()) {
                throw Refusal.of("backup.passphrase.wanted");
            }
            known = Passphrase.of(words);
        }
        return known;
    }

    /**
     * A new one, which is typed twice on a terminal.
     *
     * @throws Refusal where it is unfit
     */
    Passphrase chosen() {
        String words = file == null ? typed("command.passphrase.choose") : read(file);
        known = Passphrase.chosen(words, file == null ? typed("command.passphrase.again") : words);
        return known;
    }

    /** Without the line break that an editor adds; the first line of the standard input. */
    private static String read(Path file) {
        try {
            if (!file.equals(STANDARD_INPUT)) {
                return Files.readString(file).replaceFirst("\\R\\z", "");
            }
            // Not closed: it belongs to the process.
            String line = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
            return line == null ? "" : line;
        } catch (IOException e) {
            throw Refusal.of("command.passphrase.no-file", "file", file, "why", e.toString());
        }
    }

    private static String typed(String question) {
        Console console = System.console();
        char[] typed = console == null
                ? null
                : console.readPassword("%s ", Message.of(question).inEnglish());
        if (typed == null) {
            throw Refusal.of("command.passphrase.no-terminal");
        }
        return new String(typed);
    }
}
