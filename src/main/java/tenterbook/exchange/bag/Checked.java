package tenterbook.exchange.bag;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import tenterbook.ledger.file.Finding;

/**
 * The result of checking a bag.
 *
 * @param findings all that is wrong; empty for a complete and valid bag
 * @param payload the files under {@code data/} by their path in the bag
 * @param info the values in {@code bag-info.txt} by lower-case label
 * @param bytes of the payload
 */
public record Checked(
        List<Finding> findings, NavigableMap<String, Path> payload, Map<String, List<String>> info, long bytes) {

    /** The first value under a label, in whatever case. */
    public Optional<String> info(String label) {
        return info.getOrDefault(label.toLowerCase(java.util.Locale.ROOT), List.of()).stream()
                .findFirst();
    }
}
