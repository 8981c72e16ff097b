package tenterbook.exchange.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.openpgp.MessageDamaged;
import tenterbook.exchange.openpgp.OpenedKey;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/**
 * Opens the files of one encrypted generation. What counts is that a file opens and that its plain bytes have the digest of its name:
 * one that was written again has another sum than an older list says.
 */
final class Decrypting {
    private final EncryptedFolder folder;
    private final GenerationList list;
    private final OpenedKey key;
    private final Pace pace;
    private final long bytes;

    Decrypting(EncryptedFolder folder, GenerationList list, OpenedKey key, Progress progress) throws IOException {
        this.folder = folder;
        this.list = list;
        this.key = key;
        long all = 0;
        for (String path : list.sums().keySet()) {
            Path file = folder.root().resolve(path);
            all += Files.isRegularFile(file) ? Files.size(file) : 0;
        }
        this.bytes = all;
        this.pace = new Pace(progress, all);
    }

    /** Of all its files, encrypted. */
    long bytes() {
        return bytes;
    }

    /** Reads every photograph and paper without keeping it. */
    List<Finding> compare() throws IOException {
        return files(null);
    }

    /** Writes every photograph and paper into a folder as an archive has them. */
    List<Finding> files(@Nullable Path to) throws IOException {
        List<Finding> findings = new ArrayList<>();
        for (String path : list.sums().keySet()) {
            Optional<String> name = GenerationList.shared(path);
            if (name.isPresent()) {
                file(path, name.get(), to == null ? null : to.resolve(name.get()))
                        .ifPresent(findings::add);
            }
        }
        return findings;
    }

    private Optional<Finding> file(String path, String name, @Nullable Path to) throws IOException {
        Path from = folder.root().resolve(path);
        if (!Files.isRegularFile(from)) {
            return finding(path, "missing");
        }
        pace.begin(Message.of("backup.encrypted.opening", "file", path));
        try (InputStream in = Files.newInputStream(from);
                OutputStream out = to == null ? OutputStream.nullOutputStream() : into(to)) {
            Sums sums = key.read(in, plain -> Sums.of(plain, out, List.of("sha256"), pace));
            return name.contains("/" + sums.hex().get("sha256")) ? Optional.empty() : finding(path, "other");
        } catch (MessageDamaged e) {
            return finding(path, "damaged");
        }
    }

    private static OutputStream into(Path file) throws IOException {
        Files.createDirectories(file.getParent());
        return Files.newOutputStream(file);
    }

    private static Optional<Finding> finding(String path, String what) {
        return Optional.of(new Finding(path, Message.of("backup.encrypted." + what)).meaning(Consequence.FILES));
    }

    /** Unpacks the bag of the ledger into a folder. */
    List<Finding> ledger(Path to) throws IOException {
        String path = list.sums().keySet().stream()
                .filter(each -> each.startsWith("ledgers/"))
                .findFirst()
                .orElse("ledgers/");
        Path from = folder.root().resolve(path);
        if (!Files.isRegularFile(from)) {
            return finding(path, "missing").stream().toList();
        }
        pace.begin(Message.of("backup.encrypted.opening", "file", path));
        try (InputStream in = Files.newInputStream(from)) {
            key.read(in, plain -> {
                ZippedBag.read(plain, to, pace);
                return path;
            });
            return List.of();
        } catch (MessageDamaged e) {
            return finding(path, "damaged").stream().toList();
        }
    }
}
