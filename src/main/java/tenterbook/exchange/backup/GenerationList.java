package tenterbook.exchange.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * What one generation of an encrypted backup needs, readable without the passphrase: the SHA-256 of each file, as {@code sha256sum
 * --check} reads it, and in lines that begin with {@code #} the key, the end of the ledger and a sum of all the lines above it.
 *
 * @param key fingerprint
 * @param sums by path from the backup's folder
 */
record GenerationList(String key, BackupForm.LedgerEnd end, NavigableMap<String, String> sums) {
    private static final Pattern FILE = Pattern.compile("([0-9a-f]{64})  (\\S+)");
    private static final Pattern OWN = Pattern.compile("key\\.asc|ledgers/[0-9TZ-]+\\.zip\\.pgp");
    private static final String KEY = "# Key: ";
    private static final String SEQUENCE = "# Last-Sequence: ";
    private static final String HASH = "# Last-Hash: ";
    private static final String ABOVE = "# Above: ";

    String text() {
        StringBuilder text = new StringBuilder("# ")
                .append(Message.of("backup.encrypted.list-head").inEnglish())
                .append('\n');
        text.append(KEY).append(key).append('\n');
        text.append(SEQUENCE).append(end.sequence()).append('\n');
        text.append(HASH).append(end.hash()).append('\n');
        sums.forEach((path, sum) -> text.append(line(path, sum)));
        return text + ABOVE + sum(text.toString()) + "\n";
    }

    private static String sum(String text) {
        return Digest.of(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    /** @return empty where the list is not there, is not whole, was changed, or names what does not belong into such a folder */
    static Optional<GenerationList> read(Path file) {
        try {
            String text = Files.readString(file);
            int above = text.lastIndexOf(ABOVE);
            if (above < 0 || !text.substring(above).equals(ABOVE + sum(text.substring(0, above)) + "\n")) {
                return Optional.empty();
            }
            return Optional.of(parsed(text));
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The lines of photographs and papers in a text that may be cut off. */
    static Map<String, String> files(String text) {
        Map<String, String> sums = new HashMap<>();
        text.lines()
                .map(FILE::matcher)
                .filter(file -> file.matches() && shared(file.group(2)).isPresent())
                .forEach(file -> sums.put(file.group(2), file.group(1)));
        return sums;
    }

    /** One line. */
    static String line(String path, String sum) {
        return sum + "  " + path + "\n";
    }

    private static GenerationList parsed(String text) {
        NavigableMap<String, String> sums = new TreeMap<>();
        text.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
            Matcher file = FILE.matcher(line);
            if (!file.matches() || !fits(file.group(2))) {
                throw new IllegalArgumentException(line);
            }
            sums.put(file.group(2), file.group(1));
        });
        long sequence = Long.parseLong(after(text, SEQUENCE));
        return new GenerationList(after(text, KEY), new BackupForm.LedgerEnd(sequence, after(text, HASH)), sums);
    }

    private static boolean fits(String path) {
        return OWN.matcher(path).matches() || shared(path).isPresent();
    }

    /** The name in an archive of a photograph or a paper; empty for any other file. */
    static Optional<String> shared(String path) {
        return Optional.of(path)
                .filter(each -> each.endsWith(EncryptedFolder.PGP))
                .map(each -> each.substring(0, each.length() - EncryptedFolder.PGP.length()))
                .filter(KeptFolder::holds);
    }

    /**
     * The photographs and papers among these files, by their names in an archive.
     *
     * @param sums by path from the folder of the backup
     */
    static NavigableMap<String, Path> shared(Path root, NavigableMap<String, String> sums) {
        NavigableMap<String, Path> shared = new TreeMap<>();
        sums.keySet().forEach(path -> shared(path).ifPresent(name -> shared.put(name, root.resolve(path))));
        return shared;
    }

    private static String after(String text, String label) {
        return text.lines()
                .filter(line -> line.startsWith(label))
                .map(line -> line.substring(label.length()))
                .findFirst()
                .orElseThrow(IllegalArgumentException::new);
    }
}
