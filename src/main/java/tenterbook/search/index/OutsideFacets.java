package tenterbook.search.index;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import tenterbook.ledger.file.Progress;
import tenterbook.search.query.Facet;

/**
 * Facets whose values another room finds. The index keeps them beside its own, so that they narrow, combine and are counted like
 * any other; it asks which pieces have other values since the revision up to which it is complete, and indexes those again.
 *
 * <p>Called by the thread that indexes, and {@link #of} by several at once.
 */
public interface OutsideFacets {
    /** For an index with nothing but its own facets. */
    OutsideFacets NONE = new OutsideFacets() {
        @Override
        public List<Facet> facets() {
            return List.of();
        }

        @Override
        public String version() {
            return "none";
        }

        @Override
        public boolean takesLong() {
            return false;
        }

        @Override
        public Collection<String> changedAfter(long sequence, Progress progress) {
            return List.of();
        }

        @Override
        public Map<String, List<Given>> of(Collection<String> numbers) {
            return Map.of();
        }
    };

    /** A value of a facet, as for the address and as for people. */
    record Given(Facet facet, String value, String label) {}

    List<Facet> facets();

    /** Another one where the same records would give other values; an index of another version is made anew. */
    String version();

    /** Whether {@link #changedAfter} would take more than a moment now. Searches then answer from what there is. */
    boolean takesLong();

    /**
     * Brings the values up to the end of the ledger and returns the pieces whose values may differ from those when the
     * ledger ended with {@code sequence}.
     *
     * @return numbers of pieces, each once; too many rather than too few
     * @throws Progress.Cancelled if asked to stop
     */
    Collection<String> changedAfter(long sequence, Progress progress);

    /** The values of these pieces, by number; a piece without any may be left out. */
    Map<String, List<Given>> of(Collection<String> numbers);
}
