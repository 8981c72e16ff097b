package tenterbook.label;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.IssuedPaper;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.label.rule.Market;
import tenterbook.piece.PieceNumber;

/**
 * Whether each piece has a hang tag that says what it would say today, market by market. The newest tag of a market counts.
 * Whether the words have room on the paper is not asked here. Safe for many threads; good for as long as the ledger stays.
 */
public final class TagStanding {
    /** How a piece stands in one market. */
    public enum State {
        CURRENT("current"),
        OUT_OF_DATE("out of date"),
        NONE("none printed"),
        REFUSED("cannot be made");

        private final String word;

        State(String word) {
            this.word = word;
        }

        @Override
        public String toString() {
            return word;
        }
    }

    /** A state in a market. */
    public record Standing(Market market, State state) {}

    /** The newest tag of a piece in a market: what was asked, and its words as a number, since only their equality counts. */
    private record Tag(IssuedPaper paper, long words) {}

    private record Key(PieceNumber piece, Market market) {}

    private final Archive archive;
    private final Map<String, Map<Key, Tag>> papers = new HashMap<>();
    private final Map<Key, Tag> all;

    private TagStanding(Archive archive, Map<Key, Tag> all) {
        this.archive = archive;
        this.all = all;
    }

    /** For a few pieces: their papers are looked up piece by piece. */
    public static TagStanding ofFew(Archive archive) {
        return new TagStanding(archive, null);
    }

    /** For all pieces: every paper is read once, and of each no more is kept than is needed. */
    public static TagStanding ofAll(Archive archive) {
        Map<Key, Tag> all = new HashMap<>();
        for (String id : archive.ledger().everGiven(Kinds.ISSUED_PAPER)) {
            tags(archive, id).forEach((key, tag) -> all.merge(key, tag, TagStanding::newer));
        }
        return new TagStanding(archive, all);
    }

    /**
     * Of every market, in order.
     *
     * @param facts without colours: no rule asks for them, and they are looked up where a tag is to be compared
     */
    public List<Standing> of(LabelFacts facts) {
        List<Standing> standings = new ArrayList<>();
        for (Market market : Market.values()) {
            standings.add(new Standing(market, state(facts, market)));
        }
        return standings;
    }

    private State state(LabelFacts facts, Market market) {
        Tag tag = newest(new Key(facts.piece().number(), market));
        Optional<PrintSettings> asked = tag == null ? Optional.empty() : PrintSettings.of(tag.paper);
        try {
            LabelText now = LabelText.of(
                    tag == null ? facts : Gathering.coloured(facts),
                    asked.orElseGet(() -> PrintSettings.of(LabelKind.HANG_TAG, market)));
            if (tag == null) {
                return State.NONE;
            }
            return asked.isPresent() && tag.words == words(Issue.issued(now, 0)) ? State.CURRENT : State.OUT_OF_DATE;
        } catch (LabelBlocked e) {
            return State.REFUSED;
        }
    }

    private Tag newest(Key key) {
        if (all != null) {
            return all.get(key);
        }
        Tag newest = null;
        for (var user : archive.ledger().namedBy(Kinds.PIECE.key(key.piece.value()))) {
            if (user.kind().equals(Kinds.ISSUED_PAPER.name())) {
                Tag tag = paper(user.id()).get(key);
                newest = newest == null ? tag : tag == null ? newest : newer(newest, tag);
            }
        }
        return newest;
    }

    private synchronized Map<Key, Tag> paper(String id) {
        return papers.computeIfAbsent(id, of -> tags(archive, of));
    }

    /** None of a paper that cannot be read: what its tags say is not known. */
    private static Map<Key, Tag> tags(Archive archive, String id) {
        return Papers.named(archive.ledger(), List.of(id)).readable().stream()
                .findFirst()
                .map(TagStanding::tags)
                .orElse(Map.of());
    }

    private static Map<Key, Tag> tags(IssuedPaper paper) {
        Map<Key, Tag> tags = new HashMap<>();
        Optional<Market> market = Coded.find(Market.values(), paper.market());
        if (paper.kind().equals(Issue.word(LabelKind.HANG_TAG)) && market.isPresent()) {
            IssuedPaper head = Issue.withoutPieces(paper);
            paper.pieces()
                    .forEach(issued -> tags.put(new Key(issued.piece(), market.get()), new Tag(head, words(issued))));
        }
        return tags;
    }

    private static Tag newer(Tag one, Tag other) {
        int order = one.paper.issuedAt().compareTo(other.paper.issuedAt());
        return order > 0 || order == 0 && one.paper.id().compareTo(other.paper.id()) > 0 ? one : other;
    }

    /** 64 bits of what is said, a colour by its name; two different tags of one piece agree by chance once in 10¹⁹. */
    private static long words(IssuedPaper.Issued issued) {
        long hash = 1125899906842597L;
        for (IssuedPaper.Line line : issued.lines()) {
            hash = mixed(mixed(hash, line.part()), line.text());
        }
        hash = mixed(hash, issued.code());
        for (IssuedPaper.Colour colour : issued.colours()) {
            hash = mixed(hash, colour.name());
        }
        return hash;
    }

    private static long mixed(long hash, String text) {
        long mixed = hash;
        for (int i = 0; i < text.length(); i++) {
            mixed = (mixed ^ text.charAt(i)) * 0x100000001b3L;
        }
        return (mixed ^ 0x1f) * 0x100000001b3L;
    }
}
