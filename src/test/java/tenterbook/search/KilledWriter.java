package tenterbook.search;

import java.nio.file.Path;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.piece.Status;
import tenterbook.search.query.PieceQuery;

/** Fills an archive and its index, then ends without a word right after a write has reached the ledger. */
final class KilledWriter {
    static final int HALTED = 77;

    private KilledWriter() {}

    public static void main(String[] args) {
        Path folder = Path.of(args[0]).resolve("archive");
        try (Archive archive = Demo.archive(folder)) {
            Demo.fill(archive);
            try (PieceIndex index = PieceIndex.open(archive)) {
                index.search(PieceQuery.EVERYTHING);
            }
        }
        Archive archive = Demo.archive(folder);
        archive.ledger().follow(sequence -> Runtime.getRuntime().halt(HALTED));
        PieceIndex.open(archive).search(PieceQuery.EVERYTHING);
        Demo.save(archive, Kinds.PIECE, Demo.piece("V24-099", "unindexed", null, Status.KEPT, "2024"));
    }
}
