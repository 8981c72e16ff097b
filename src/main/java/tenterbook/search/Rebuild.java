package tenterbook.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.index.PieceFactsLoader;
import tenterbook.words.Message;

/** Fills a new generation with every piece of the ledger, on all processors. */
final class Rebuild {
    /** Pieces read together; between two batches progress is reported and cancelling checked. */
    private static final int TOGETHER = 50;

    private Rebuild() {}

    /**
     * The ledger may be written meanwhile; the generation is then complete up to the sequence at the start, and {@link
     * CatchUp} adds the rest.
     *
     * @throws Progress.Cancelled if asked to stop; the generation must then be discarded
     */
    static void fill(Archive archive, OutsideFacets outside, Generation generation, Progress progress)
            throws IOException {
        long sequence = archive.ledger().lastSequence();
        List<String> numbers = archive.ledger().allIdsEverUsed(Kinds.PIECE);
        outside.changedAfter(sequence, progress);
        PieceFactsLoader loader = new PieceFactsLoader(archive, outside);
        String indexing = Message.of("search.indexing").inEnglish();
        AtomicInteger next = new AtomicInteger();
        int threads = Math.max(1, Math.min(8, Runtime.getRuntime().availableProcessors()));
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> working = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                working.add(workers.submit(() -> {
                    for (int at = next.getAndAdd(TOGETHER); at < numbers.size(); at = next.getAndAdd(TOGETHER)) {
                        progress.orStop();
                        progress.at(at, numbers.size(), indexing);
                        List<String> some = numbers.subList(at, Math.min(numbers.size(), at + TOGETHER));
                        for (PieceDocument entry : loader.entries(some).values()) {
                            generation.add(entry);
                        }
                    }
                    return null;
                }));
            }
            for (Future<?> each : working) {
                finished(each);
            }
        } finally {
            next.set(Integer.MAX_VALUE / 2);
            workers.shutdown();
        }
        progress.orStop();
        generation.refresh(sequence);
        progress.at(numbers.size(), numbers.size(), indexing);
    }

    private static void finished(Future<?> work) throws IOException {
        try {
            work.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException refused) {
                throw refused;
            }
            if (e.getCause() instanceof IOException broken) {
                throw broken;
            }
            throw new IllegalStateException("A piece could not be indexed", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ArchiveProblem(Message.of("search.trouble.interrupted").inEnglish(), e);
        }
    }
}
