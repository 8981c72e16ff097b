package tenterbook.exchange;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import tenterbook.ledger.file.Finding;
import tenterbook.measure.Digest;

/**
 * An archive that came back from a bag.
 *
 * @param lastSequence of its ledger
 * @param lastHash at the end of its chain
 * @param photos originals that came with it
 * @param damage what is wrong with photographs and was allowed
 * @param notes remarks: orphans, files that were no part of an archive, what the bag lacks, what a killed process had left
 */
public record Restored(
        Path folder, long lastSequence, Digest lastHash, long photos, List<Finding> damage, List<Finding> notes) {
    public Restored {
        damage = List.copyOf(damage);
        notes = List.copyOf(notes);
    }

    /** With one remark more. */
    public Restored noting(Finding note) {
        return new Restored(
                folder,
                lastSequence,
                lastHash,
                photos,
                damage,
                Stream.concat(notes.stream(), Stream.of(note)).toList());
    }
}
