package tenterbook.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Counts of facet values, added up over the segments. */
final class FacetTally {
    private static final int MOST_VALUES = 60;
    private final Map<Facet, Map<String, Integer>> counts = new EnumMap<>(Facet.class);
    private final Map<Facet, Map<String, String>> labels = new EnumMap<>(Facet.class);

    void add(Facet facet, Columns.Values values, int[] found) {
        Map<String, Integer> sums = counts.computeIfAbsent(facet, of -> new HashMap<>());
        Map<String, String> names = labels.computeIfAbsent(facet, of -> new HashMap<>());
        for (int ord = 0; ord < found.length; ord++) {
            if (found[ord] > 0) {
                PieceFacets.Value value = values.values()[ord];
                sums.merge(value.value(), found[ord], Integer::sum);
                names.merge(value.value(), value.label(), (one, other) -> one.compareTo(other) <= 0 ? one : other);
            }
        }
    }

    List<FacetGroup> groups(PieceQuery query) {
        List<FacetGroup> groups = new ArrayList<>();
        for (Facet facet : Facet.values()) {
            List<FacetCount> group = group(facet, query.chosen(facet));
            if (!group.isEmpty()) {
                groups.add(new FacetGroup(facet.parameter(), facet.label(), group));
            }
        }
        return groups;
    }

    private List<FacetCount> group(Facet facet, List<String> chosen) {
        Map<String, Integer> sums = new LinkedHashMap<>(counts.getOrDefault(facet, Map.of()));
        Map<String, String> names = labels.getOrDefault(facet, Map.of());
        Set<String> folded = chosen.stream().map(FacetValues::folded).collect(Collectors.toSet());
        Set<String> present = sums.keySet().stream().map(FacetValues::folded).collect(Collectors.toSet());
        chosen.stream()
                .filter(value -> !present.contains(FacetValues.folded(value)))
                .forEach(value -> sums.put(value, 0));
        Comparator<FacetCount> order = facet == Facet.YEAR
                ? Comparator.comparing(FacetCount::value).reversed()
                : Comparator.comparingInt((FacetCount count) -> -count.count()).thenComparing(FacetCount::value);
        List<FacetCount> all = sums.entrySet().stream()
                .map(sum -> new FacetCount(
                        sum.getKey(),
                        names.getOrDefault(sum.getKey(), sum.getKey()),
                        sum.getValue(),
                        folded.contains(FacetValues.folded(sum.getKey()))))
                .sorted(order)
                .toList();
        List<FacetCount> shown = new ArrayList<>();
        for (FacetCount count : all) {
            if (shown.size() < MOST_VALUES || count.chosen()) {
                shown.add(count);
            }
        }
        return shown;
    }
}
