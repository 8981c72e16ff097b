package tenterbook.exchange.kept;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.words.Message;

/** Copies photographs and papers into a backup, each once; a file gets its name when it was read back and is whole. */
public final class BackupFiles implements SharedFiles {
    private final Path root;
    private long copied;
    private long bytes;

    public BackupFiles(Path root) {
        this.root = root;
    }

    @Override
    public NavigableMap<String, Path> there() throws IOException {
        NavigableMap<String, Path> there = new TreeMap<>();
        new BackupFolder(root).addFiles(there);
        return there;
    }

    @Override
    public long copied() {
        return copied;
    }

    @Override
    public long bytes() {
        return bytes;
    }

    @Override
    public String store(KeptFolder folder, KeptFiles.KeptFile file, String hex, Pace pace) throws IOException {
        Path target = root.resolve(folder.path(file.path()));
        if (Files.isRegularFile(target) && Files.size(target) == file.bytes()) {
            return hex;
        }
        HashedFiles store = new HashedFiles(root.resolve(folder.path("")));
        Path part = store.arriving();
        try {
            Sums.copy(file.file(), part, pace);
            String found = Sums.of(part, List.of("sha256"), pace).hex().get("sha256");
            if (!found.equals(hex)) {
                String own = Sums.of(file.file(), List.of("sha256"), pace).hex().get("sha256");
                if (own.equals(hex)) {
                    throw new ArchiveProblem(Message.of("backup.reads-otherwise", "file", file.path()));
                }
                return own;
            }
            Files.createDirectories(target.getParent());
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            copied++;
            bytes += file.bytes();
            return hex;
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
