package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** Files made from the words of records, see {@link Privacy#files}, and which of them the ledger still names. */
final class MadeFiles {
    private static final int PAGE = 1000;

    private final Path folder;
    private final KnownKinds kinds;

    MadeFiles(Path folder, KnownKinds kinds) {
        this.folder = folder;
        this.kinds = kinds;
    }

    /**
     * Deletes every file that no revision names, also part files.
     *
     * @return how many there were
     * @throws ArchiveProblem where one cannot be deleted
     */
    int deleteUnnamed(Handle handle) {
        try {
            return HashedFiles.deleteAllBut(folder, named(handle));
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.erased-but-file", "folder", folder.toAbsolutePath(), "why", e.toString()), e);
        }
    }

    private Set<Digest> named(Handle handle) {
        Set<Digest> named = new HashSet<>();
        long sequence = 0;
        List<Revision> page = LedgerSql.after(handle, sequence, PAGE);
        while (!page.isEmpty()) {
            for (Revision revision : page) {
                sequence = revision.sequence();
                List<String> paths = kinds.privacy(revision.key().kind()).files();
                if (!paths.isEmpty()) {
                    JsonNode record = RecordCodec.parsed(revision.json());
                    paths.stream()
                            .map(path -> record.at("/" + path.replace('.', '/')).asText())
                            .filter(hex -> hex.matches("[0-9a-f]{64}"))
                            .map(Digest::new)
                            .forEach(named::add);
                }
            }
            page = LedgerSql.after(handle, sequence, PAGE);
        }
        return named;
    }
}
