package tenterbook.search.facet;

/**
 * One value of a facet.
 *
 * @param value for the parameter
 * @param label for people
 * @param count pieces that would be found with this value, all other choices kept
 * @param chosen whether the query has it
 */
public record FacetCount(String value, String label, int count, boolean chosen) {}
