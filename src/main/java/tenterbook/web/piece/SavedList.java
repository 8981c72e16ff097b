package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.beside.SavedSearches.SavedSearch;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.QueryParameters;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.found.ViewChoice;
import tenterbook.web.page.Address;
import tenterbook.web.page.Words;
import tenterbook.words.Refusal;

/**
 * Saved searches, each with how many pieces it finds now.
 *
 * @param searches by name
 * @param further how many more are saved
 * @param removed the one removed last; null where there is none
 */
public record SavedList(List<Saved> searches, int further, SavedSearches.@Nullable SavedSearch removed) {
    /** On the page of the pieces; all are on a page of their own. */
    private static final int SHOWN = 12;

    /**
     * The counting ends after this time, so that the page of the pieces never waits for slow searches. Twelve of all kinds, counted on
     * 20,000 pieces, took 40 ms on a busy machine of two processors.
     */
    private static final Duration LONGEST = Duration.ofMillis(250);

    private static final Duration LONGEST_OF_ALL = Duration.ofSeconds(2);

    /**
     * @param question in words, as in '“linen”, Status: sold, as a table'
     * @param count of pieces now; null where it was not counted
     * @param problem why the search cannot be read any more; empty where it can
     */
    public record Saved(
            long id,
            String name,
            String address,
            String question,
            @Nullable Long count,
            String problem) {}

    /** What a saved search asks for. */
    record Asked(PieceQuery query, ViewChoice choice) {}

    /** The first of them, counted as far as that is quick. */
    static SavedList some(Site site) {
        return of(site, SHOWN, LONGEST);
    }

    /** All, counted as far as that takes no longer than a person waits. */
    static SavedList all(Site site) {
        return of(site, SavedSearches.MOST, LONGEST_OF_ALL);
    }

    private static SavedList of(Site site, int most, Duration longest) {
        SavedSearches kept = site.ledger().savedSearches();
        List<SavedSearch> all = kept.all();
        long until = System.nanoTime() + longest.toNanos();
        List<Saved> searches = new ArrayList<>();
        for (SavedSearch search : all.subList(0, Math.min(most, all.size()))) {
            searches.add(of(site, search, System.nanoTime() < until));
        }
        return new SavedList(
                searches, all.size() - searches.size(), kept.removed().orElse(null));
    }

    static Saved of(Site site, SavedSearch search, boolean counted) {
        String address = search.question().isEmpty() ? "/" : "/?" + search.question();
        try {
            Asked asked = read(site, FormEncoding.decoded(search.question()));
            return new Saved(
                    search.id(),
                    search.name(),
                    address,
                    inWords(asked),
                    counted ? site.index().count(asked.query()) : null,
                    "");
        } catch (IllegalArgumentException e) {
            return new Saved(
                    search.id(), search.name(), address, "", null, w("searches.unreadable", "why", Words.sentence(e)));
        }
    }

    /**
     * Reads the parameters of a search that is saved or to be saved, by today's rules.
     *
     * @throws Refusal where one of them is not understood, or is not known: leaving it out would find other pieces
     */
    static Asked read(Site site, Map<String, List<String>> parameters) {
        Asked asked = new Asked(site.index().query(parameters), ViewChoice.read(parameters));
        TreeSet<String> unknown = new TreeSet<>(parameters.keySet());
        unknown.removeAll(QueryParameters.names(site.index().facets()));
        unknown.removeAll(ViewChoice.NAMES);
        if (!unknown.isEmpty()) {
            throw Refusal.of("searches.unknown-parameter", "names", String.join(", ", unknown));
        }
        List<String> idle = QueryParameters.idle(parameters, asked.query());
        if (!idle.isEmpty()) {
            throw Refusal.of("search.idle", "names", String.join(", ", idle), "count", idle.size());
        }
        return asked;
    }

    /** The parameters as they are kept: only those that are not as usual, without the page. */
    static String question(Asked asked) {
        Map<String, List<String>> parameters =
                new LinkedHashMap<>(asked.query().withPage(1).toParameters());
        parameters.putAll(asked.choice().toParameters());
        return Address.query(parameters);
    }

    private static String inWords(Asked asked) {
        String narrowed = SearchLinks.chosen(asked.query()).stream()
                .map(SearchLinks.Link::label)
                .collect(Collectors.joining(", "));
        String order = asked.query().sort() == null
                ? ""
                : w(
                        "searches.by",
                        "order",
                        w("pieces.order." + asked.query().sort().word()));
        String view = asked.choice().view() == ViewChoice.View.LINES
                ? ""
                : w("searches.as." + asked.choice().view().word());
        return Stream.of(narrowed.isEmpty() ? w("searches.everything") : narrowed, order, view)
                .filter(Objects::nonNull)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }
}
