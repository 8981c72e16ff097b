package tenterbook.web.piece;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tenterbook.labelling.issue.HangTagStatus;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.issue.TagTable;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.Progress;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.query.Facet;
import tenterbook.words.Message;

/** The state of the hang tags of pieces, as a facet of the search. */
public final class TagFacet implements OutsideFacets {
    /** For a piece whose tag is not current, for any reason. */
    static final String LACKING = "lacking";

    /**
     * The hang tag by market, as in {@code us:current}, {@code us:out-of-date}, {@code us:none-printed} and {@code
     * us:cannot-be-made}; {@code us:lacking} is all but the first.
     */
    public static final Facet TAG = Facet.outside("tag", Message.of("search.facet.tag"), Facet.STATUS, choices());

    private final TagTable tags;

    public TagFacet(TagTable tags) {
        this.tags = tags;
    }

    private static List<String> choices() {
        return Stream.of(Market.values())
                .flatMap(market -> Stream.concat(
                                Stream.of(HangTagStatus.State.values()).map(TagFacet::word), Stream.of(LACKING))
                        .map(word -> market.code() + ":" + word))
                .toList();
    }

    /** As in {@code out-of-date}. */
    static String word(HangTagStatus.State state) {
        return state.toString().replace(' ', '-');
    }

    @Override
    public List<Facet> facets() {
        return List.of(TAG);
    }

    @Override
    public String version() {
        return "tags " + TagTable.version();
    }

    @Override
    public boolean takesLong() {
        return tags.takesLong();
    }

    @Override
    public Collection<String> changedAfter(long sequence, Progress progress) {
        return tags.changedAfter(sequence, progress);
    }

    @Override
    public Map<String, List<Given>> of(Collection<String> numbers) {
        Map<String, List<Given>> given = new LinkedHashMap<>();
        tags.of(numbers).forEach((number, standings) -> given.put(number, given(standings)));
        return given;
    }

    private static List<Given> given(List<Standing> standings) {
        List<Given> given = new ArrayList<>();
        for (Standing standing : standings) {
            String market = standing.market().code() + ":";
            String name = standing.market().name() + ", ";
            given.add(new Given(TAG, market + word(standing.state()), name + standing.state()));
            if (standing.state() != HangTagStatus.State.CURRENT) {
                given.add(new Given(TAG, market + LACKING, name + LACKING));
            }
        }
        return given;
    }
}
