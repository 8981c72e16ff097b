package tenterbook.search;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Revision;

/** Brings a generation up to the end of the ledger, batch by batch. One thread at a time for each generation. */
final class CatchUp {
    private static final int BATCH = 1000;
    private static final int TOGETHER = 50;

    private CatchUp() {}

    /** Whether the next batch holds a change that every piece shows. */
    static boolean touchesAll(Archive archive, Generation generation) {
        return archive.ledger().after(generation.seen(), BATCH).stream()
                .anyMatch(revision -> revision.key().kind().equals(Kinds.STUDIO.name()));
    }

    /** @param stop asked between two batches and now and then within one */
    static void run(Archive archive, Generation generation, java.util.function.BooleanSupplier stop)
            throws IOException {
        List<Revision> batch = archive.ledger().after(generation.seen(), BATCH);
        while (!batch.isEmpty() && !stop.getAsBoolean()) {
            Set<String> numbers = Dependents.of(
                    archive.ledger(), batch.stream().map(Revision::key).toList());
            Gatherer gatherer = new Gatherer(archive);
            List<String> all = List.copyOf(numbers);
            for (int at = 0; at < all.size(); at += TOGETHER) {
                if (stop.getAsBoolean()) {
                    return;
                }
                List<String> some = all.subList(at, Math.min(all.size(), at + TOGETHER));
                Map<String, PieceDocument> entries = gatherer.entries(some);
                for (PieceDocument entry : entries.values()) {
                    generation.replace(entry);
                }
                for (String number : some) {
                    if (entries.containsKey(number)) {
                        continue;
                    }
                    generation.remove(number);
                }
            }
            generation.refresh(batch.get(batch.size() - 1).sequence());
            batch = archive.ledger().after(generation.seen(), BATCH);
        }
    }
}
