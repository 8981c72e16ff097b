package tenterbook.search;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.Dependents;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.index.PieceFactsLoader;

/** Brings a generation up to the end of the ledger, batch by batch. One thread at a time for each generation. */
final class CatchUp {
    private static final int BATCH = 1000;
    private static final int TOGETHER = 50;

    private CatchUp() {}

    /**
     * @param progress asked whether to stop after every {@value #TOGETHER} pieces
     * @throws Progress.Cancelled if asked to stop while values from outside were found
     */
    static void run(Archive archive, OutsideFacets outside, Generation generation, Progress progress)
            throws IOException {
        List<Revision> batch = archive.ledger().after(generation.seen(), BATCH);
        while (!batch.isEmpty() && !progress.cancelled()) {
            Set<String> numbers = Dependents.of(
                    archive.ledger(), batch.stream().map(Revision::key).toList());
            numbers.addAll(outside.changedAfter(generation.seen(), progress));
            if (!pieces(archive, outside, generation, numbers, progress)) {
                return;
            }
            generation.refresh(batch.get(batch.size() - 1).sequence());
            batch = archive.ledger().after(generation.seen(), BATCH);
        }
    }

    /**
     * Indexes these pieces as they are now.
     *
     * @return false if asked to stop
     */
    static boolean pieces(
            Archive archive, OutsideFacets outside, Generation generation, Set<String> numbers, Progress progress)
            throws IOException {
        PieceFactsLoader loader = new PieceFactsLoader(archive, outside);
        List<String> all = List.copyOf(numbers);
        for (int at = 0; at < all.size(); at += TOGETHER) {
            if (progress.cancelled()) {
                return false;
            }
            List<String> some = all.subList(at, Math.min(all.size(), at + TOGETHER));
            Map<String, PieceDocument> entries = loader.entries(some);
            for (PieceDocument entry : entries.values()) {
                generation.replace(entry);
            }
            for (String number : some) {
                if (!entries.containsKey(number)) {
                    generation.remove(number);
                }
            }
        }
        return true;
    }
}
