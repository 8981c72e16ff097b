package tenterbook.exchange.backup;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicReference;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.KeptFiles;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.exchange.kept.SharedFiles;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.EncryptedMessage;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** Encrypts files into a backup, each once; a file gets its name when it was read back as it was written. */
final class EncryptedFiles implements SharedFiles {
    private static final int CHUNK = 1 << 16;

    private final EncryptedFolder folder;
    private final BackupKey key;
    private final Map<String, String> known;
    private final Map<KeptFolder, HashedFiles> arriving = new EnumMap<>(KeptFolder.class);
    private final NavigableMap<String, String> needed = new TreeMap<>();
    private long copied;
    private long bytes;

    EncryptedFiles(EncryptedFolder folder, BackupKey key) throws IOException {
        this.folder = folder;
        this.key = key;
        this.known = folder.sums();
        for (KeptFolder each : KeptFolder.values()) {
            arriving.put(each, new HashedFiles(folder.root().resolve(each.path(""))));
        }
    }

    /** The SHA-256 of every file that was stored or found in this run, by its path from the folder. */
    NavigableMap<String, String> needed() {
        return needed;
    }

    @Override
    public NavigableMap<String, Path> there() {
        return GenerationList.shared(folder.root(), needed);
    }

    @Override
    public long copied() {
        return copied;
    }

    @Override
    public long bytes() {
        return bytes;
    }

    /** What no list names is written again: a killed backup left it, and its sum is not known. */
    @Override
    public String store(KeptFolder kept, KeptFiles.KeptFile file, String hex, Pace pace) throws IOException {
        String path = kept.path(file.path()) + EncryptedFolder.PGP;
        Path target = folder.root().resolve(path);
        // An encrypted file is longer than the plain one, so one that was cut off is mostly found without reading it.
        if (known.containsKey(path) && Files.isRegularFile(target) && Files.size(target) > file.bytes()) {
            needed.put(path, known.get(path));
            return hex;
        }
        Path part = arriving.get(kept).arriving();
        AtomicReference<String> own = new AtomicReference<>();
        try {
            String written = write(part, file.file().getFileName().toString(), pace, plain -> {
                try (InputStream in = Files.newInputStream(file.file())) {
                    own.set(Sums.of(in, plain, List.of("sha256"), pace).hex().get("sha256"));
                }
            });
            if (own.get().equals(hex)) {
                Files.createDirectories(target.getParent());
                name(part, target, written);
                // After a line that a killed backup may have left half.
                Files.writeString(
                        folder.soFar(),
                        "\n" + GenerationList.line(path, written),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.APPEND);
                copied++;
                bytes += file.bytes();
            }
            return own.get();
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Stores a bag of the ledger. */
    void store(Path bag, String path, Pace pace) throws IOException {
        Path target = folder.root().resolve(path);
        Path part = target.resolveSibling(target.getFileName() + ".part");
        String name = target.getFileName().toString().replace(EncryptedFolder.PGP, "");
        String written = write(part, name, pace, plain -> ZippedBag.write(bag, plain, pace));
        name(part, target, written);
    }

    private void name(Path part, Path target, String sum) throws IOException {
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        needed.put(folder.root().relativize(target).toString().replace('\\', '/'), sum);
    }

    private String write(Path part, String name, Pace pace, EncryptedMessage.Writing plain) throws IOException {
        MessageDigest digest = Digest.sha256();
        try (FileChannel file = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                OutputStream out = new BufferedOutputStream(
                        new DigestOutputStream(Channels.newOutputStream(file), digest), CHUNK)) {
            EncryptedMessage.write(out, key, name, plain);
            out.flush();
            file.force(true);
        }
        String written = Digest.of(digest).hex();
        if (!Sums.of(part, List.of("sha256"), pace).hex().get("sha256").equals(written)) {
            throw new ArchiveProblem(Message.of("backup.reads-otherwise", "file", name));
        }
        return written;
    }
}
