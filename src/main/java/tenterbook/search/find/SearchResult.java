package tenterbook.search.find;

import java.util.List;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.question.Offer;
import tenterbook.search.question.Understood;
import tenterbook.words.Message;

/**
 * What a search found.
 *
 * @param total pieces found, of which {@code hits} are one page
 * @param facets one group for each facet that has values, in their order
 * @param query as it was understood
 * @param micros time taken, microseconds
 * @param respelt whether nothing had the words as typed and similar spellings were taken
 * @param behind revisions the index had not yet seen; 0 unless it is catching up after being far behind
 * @param note a sentence for the person where the search could not be answered as asked; usually empty
 * @param understood what of the question was read as facts, in order
 * @param leftOut words of the question that no piece found has; empty unless nothing has all of them
 * @param offers other ways in which the question may have been meant
 * @param remarks sentences on what of the question could not be looked for, or was read otherwise than typed
 */
public record SearchResult(
        long total,
        List<Hit> hits,
        List<FacetGroup> facets,
        PieceQuery query,
        long micros,
        boolean respelt,
        long behind,
        String note,
        List<Understood> understood,
        List<String> leftOut,
        List<Offer> offers,
        List<Message> remarks) {
    public SearchResult {
        hits = List.copyOf(hits);
        facets = List.copyOf(facets);
        understood = List.copyOf(understood);
        leftOut = List.copyOf(leftOut);
        offers = List.copyOf(offers);
        remarks = List.copyOf(remarks);
    }
}
