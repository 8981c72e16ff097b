package tenterbook.search.facet;

import java.util.List;

/**
 * The values of one facet among the pieces found, most frequent first (years newest first). Choosing one value still
 * shows the counts of the others.
 *
 * @param name of the parameter
 * @param label for people
 */
public record FacetGroup(String name, String label, List<FacetCount> counts) {
    public FacetGroup {
        counts = List.copyOf(counts);
    }
}
