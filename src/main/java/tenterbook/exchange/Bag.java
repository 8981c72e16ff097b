package tenterbook.exchange;

import java.nio.file.Path;
import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.measure.Digest;

/**
 * A bag that was packed.
 *
 * @param files in the payload
 * @param bytes of the payload
 * @param lastSequence of the ledger inside, 0 for an empty one
 * @param lastHash at the end of its chain
 * @param photos originals inside
 * @param damage damage of the archive that was packed nonetheless on request
 * @param leftOut files in the photos folder that no record names and that do not match their name
 * @param contents what the bag has, and so who may see it
 * @param notes remarks, such as what a killed process had left
 */
public record Bag(
        Path folder,
        long files,
        long bytes,
        long lastSequence,
        Digest lastHash,
        long photos,
        List<Finding> damage,
        List<String> leftOut,
        Contents contents,
        List<Finding> notes) {
    public Bag {
        damage = List.copyOf(damage);
        leftOut = List.copyOf(leftOut);
        notes = List.copyOf(notes);
    }
}
