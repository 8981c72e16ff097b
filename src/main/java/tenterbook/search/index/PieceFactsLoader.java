package tenterbook.search.index;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.ledger.file.ArchiveProblem;

/**
 * Makes the index entries of pieces from their facts. What many pieces share is read once and kept, so an instance is used for
 * one batch; after writes meanwhile, what changed must be indexed again. Thread-safe.
 */
public final class PieceFactsLoader {
    private static final Logger LOG = LoggerFactory.getLogger(PieceFactsLoader.class);
    private final PieceReader reader;
    private final OutsideFacets outside;

    public PieceFactsLoader(Archive archive, OutsideFacets outside) {
        this.reader = new PieceReader(archive);
        this.outside = outside;
    }

    /**
     * The index entry of a piece; empty where the piece is withdrawn or never was.
     *
     * @throws Unindexable where its records hold something that no entry can be made of
     */
    public Optional<PieceDocument> entry(String number) {
        try {
            return entriesOf(List.of(number)).values().stream().findFirst();
        } catch (Unindexable e) {
            throw e;
        } catch (RuntimeException e) {
            throw new Unindexable(e);
        }
    }

    /**
     * The index entries of several pieces by number, read together. Those withdrawn are left out, and those that cannot be
     * indexed too, with a line in the log.
     */
    public Map<String, PieceDocument> entries(List<String> numbers) {
        try {
            return entriesOf(numbers);
        } catch (RuntimeException e) {
            // One of them cannot be read; one by one, the others can.
            Map<String, PieceDocument> entries = new LinkedHashMap<>();
            numbers.forEach(number -> entryIfAny(number).ifPresent(entry -> entries.put(number, entry)));
            return entries;
        }
    }

    private Map<String, PieceDocument> entriesOf(List<String> numbers) {
        Map<String, PieceDocument> entries = new LinkedHashMap<>();
        Map<String, List<OutsideFacets.Given>> given = outside.of(numbers);
        for (PieceFacts facts : reader.named(numbers)) {
            String number = facts.piece().number().value();
            entries.put(number, document(facts, given.getOrDefault(number, List.of())));
        }
        return entries;
    }

    /** As {@link #entry}, but one piece that cannot be indexed keeps no other from being found. */
    Optional<PieceDocument> entryIfAny(String number) {
        try {
            return entry(number);
        } catch (Unindexable e) {
            if (e.getCause() instanceof ArchiveProblem known) {
                LOG.error(
                        "Piece {} cannot be indexed; searches leave it out until its record is mended: {}",
                        number,
                        known.getMessage());
            } else {
                LOG.error("Piece {} cannot be indexed; searches leave it out until its record is mended", number, e);
            }
            return Optional.empty();
        }
    }

    private static PieceDocument document(PieceFacts facts, List<OutsideFacets.Given> given) {
        try {
            return PieceDocument.of(facts, given);
        } catch (RuntimeException e) {
            throw new Unindexable(e);
        }
    }

    /** What a piece's records hold cannot be brought into the form of the index. */
    public static final class Unindexable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Unindexable(RuntimeException cause) {
            super(cause.getMessage(), cause);
        }
    }
}
