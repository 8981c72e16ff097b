package tenterbook.web.piece;

import java.util.List;
import tenterbook.web.found.ViewChoice;

/** Links of a page of results that keep the view when the search changes. */
record KeptView(ViewChoice choice) {
    List<SearchLinks.Link> links(List<SearchLinks.Link> links) {
        return links.stream()
                .map(link ->
                        new SearchLinks.Link(link.label(), choice.onto(link.address()), link.count(), link.chosen()))
                .toList();
    }

    List<SearchLinks.Group> groups(List<SearchLinks.Group> groups) {
        return groups.stream()
                .map(group -> new SearchLinks.Group(group.label(), links(group.values()), group.open()))
                .toList();
    }

    List<SearchLinks.Fact> facts(List<SearchLinks.Fact> facts) {
        return facts.stream()
                .map(fact ->
                        new SearchLinks.Fact(fact.label(), choice.onto(fact.without()), choice.onto(fact.asWords())))
                .toList();
    }
}
