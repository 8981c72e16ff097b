package tenterbook.search.facet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PieceQuery;

/** Counts of facet values by their numbers, and as groups for people. */
public final class FacetTally {
    private static final int MOST_VALUES = 60;
    private final FacetTerms.Term[] terms;
    private final int[] counts;

    public FacetTally(FacetTerms.Term[] terms) {
        this.terms = terms;
        this.counts = new int[terms.length];
    }

    /** Counts to be filled and added. */
    public int[] none() {
        return new int[counts.length];
    }

    public void add(int[] more) {
        for (int i = 0; i < counts.length; i++) {
            counts[i] += more[i];
        }
    }

    /** What is counted under one value; labels of it may differ while names are being changed, the first by letter is shown. */
    private static final class Sum {
        private final FacetTerms.Term term;
        private String label;
        private int count;

        Sum(FacetTerms.Term term) {
            this.term = term;
            this.label = term.value().label();
        }
    }

    public List<FacetGroup> groups(PieceQuery query) {
        Map<Facet, Map<String, Sum>> sums = new TreeMap<>();
        query.chosen().keySet().forEach(facet -> sums.put(facet, new HashMap<>()));
        for (int number = 0; number < counts.length; number++) {
            if (counts[number] > 0 && terms[number].facet().offered()) {
                FacetTerms.Term term = terms[number];
                Sum sum = sums.computeIfAbsent(term.facet(), of -> new HashMap<>())
                        .computeIfAbsent(term.value().value(), of -> new Sum(term));
                sum.count += counts[number];
                String label = term.value().label();
                sum.label = sum.label.compareTo(label) <= 0 ? sum.label : label;
            }
        }
        List<FacetGroup> groups = new ArrayList<>();
        sums.forEach((facet, of) -> groups.add(
                new FacetGroup(facet.parameter(), facet.label().inEnglish(), group(facet, of, query.chosen(facet)))));
        return groups;
    }

    private static List<FacetCount> group(Facet facet, Map<String, Sum> sums, List<String> chosen) {
        Set<String> wanted = chosen.stream().map(FacetValues::folded).collect(Collectors.toSet());
        List<FacetCount> all = new ArrayList<>();
        sums.forEach((value, sum) ->
                all.add(new FacetCount(value, sum.label, sum.count, wanted.contains(sum.term.folded()))));
        if (!chosen.isEmpty()) {
            Set<String> present =
                    sums.values().stream().map(sum -> sum.term.folded()).collect(Collectors.toSet());
            chosen.stream()
                    .filter(value -> !present.contains(FacetValues.folded(value)))
                    .forEach(value -> all.add(new FacetCount(value, value, 0, true)));
        }
        all.sort(
                facet.equals(Facet.YEAR)
                        ? Comparator.comparing(FacetCount::value).reversed()
                        : Comparator.comparingInt((FacetCount count) -> -count.count())
                                .thenComparing(FacetCount::value));
        if (all.size() <= MOST_VALUES) {
            return all;
        }
        List<FacetCount> shown = new ArrayList<>(all.subList(0, MOST_VALUES));
        all.stream().skip(MOST_VALUES).filter(FacetCount::chosen).forEach(shown::add);
        return shown;
    }
}
