package tenterbook.ledger.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A ledger's file in a folder of its own, with its log and its journal where it has those; gone when closed. */
record LedgerCopy(Path file) implements AutoCloseable {
    static LedgerCopy of(Path ledger) throws IOException {
        Path folder = Files.createTempDirectory("tenterbook-ledger");
        LedgerCopy copy = new LedgerCopy(folder.resolve("ledger.db"));
        try {
            Files.copy(ledger, copy.file);
            for (String ending : List.of("-wal", "-journal")) {
                Path beside = ledger.resolveSibling(ledger.getFileName() + ending);
                if (Files.exists(beside)) {
                    Files.copy(beside, folder.resolve("ledger.db" + ending));
                }
            }
            // What a read-only file is copied to may be read-only too.
            try (Stream<Path> files = Files.list(folder)) {
                files.forEach(each -> each.toFile().setWritable(true));
            }
            return copy;
        } catch (IOException e) {
            copy.close();
            throw e;
        }
    }

    @Override
    public void close() throws IOException {
        Path folder = file.getParent();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
        Files.delete(folder);
    }
}
