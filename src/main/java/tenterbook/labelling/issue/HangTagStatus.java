package tenterbook.labelling.issue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.LabelWords;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.TagColours;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * Whether a piece has a hang tag with the words it would have today, market by market. The newest tag of a market counts.
 * Whether the words fit on the paper is not checked. Thread-safe; valid until the ledger changes. {@link TagTable} stores the
 * results.
 */
public final class HangTagStatus {
    public enum State implements CodedChoice, Worded {
        CURRENT("current"),
        OUT_OF_DATE("out-of-date"),
        NONE("none"),
        REFUSED("refused");

        private final String code;

        State(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }

        @Override
        public Message word() {
            return Message.of("label.standing." + code);
        }

        @Override
        public String toString() {
            return inEnglish();
        }
    }

    /**
     * A state in a market.
     *
     * @param reasons reasons against a tag, or parts of the tag that would read differently; may be empty
     */
    public record Standing(Market market, State state, List<String> reasons) {
        public Standing {
            reasons = List.copyOf(reasons);
        }
    }

    /** The newest tag of a piece in a market: its paper, and a hash of each part. */
    private record Tag(IssuedPaper paper, long[] parts) {}

    private static final List<Part> PARTS = List.of(Part.values());
    private static final String OLDER_FORM =
            Message.of("label.standing.older-form").inEnglish();

    private record Key(PieceNumber piece, Market market) {}

    private final Archive archive;
    private final Map<String, Map<Key, Tag>> papers = new HashMap<>();
    private final Map<Key, Tag> all;

    private HangTagStatus(Archive archive, Map<Key, Tag> all) {
        this.archive = archive;
        this.all = all;
    }

    /** For a few pieces: papers are read piece by piece. */
    static HangTagStatus ofFew(Archive archive) {
        return new HangTagStatus(archive, null);
    }

    /** For all pieces: every paper is read once, and only hashes are kept. */
    static HangTagStatus ofAll(Archive archive) {
        Map<Key, Tag> all = new HashMap<>();
        for (String id : archive.ledger().allIdsEverUsed(Kinds.ISSUED_PAPER)) {
            tags(archive, id).forEach((key, tag) -> all.merge(key, tag, HangTagStatus::newer));
        }
        return new HangTagStatus(archive, all);
    }

    /** The status of one piece in one market, from its own papers. */
    public static Standing of(Archive archive, PieceFacts facts, Market market) {
        return ofFew(archive).standing(facts, market);
    }

    /** The status in every market, in order. Colours are named only where a tag is compared, since that is slow. */
    public List<Standing> of(PieceFacts facts) {
        List<Standing> standings = new ArrayList<>();
        for (Market market : Market.values()) {
            standings.add(standing(facts, market));
        }
        return standings;
    }

    private Standing standing(PieceFacts facts, Market market) {
        Tag tag = newest(new Key(facts.piece().number(), market));
        Optional<PrintSettings> asked = tag == null ? Optional.empty() : PrintSettings.of(tag.paper);
        try {
            LabelText now = new LabelWords(
                            facts,
                            asked.orElseGet(() -> PrintSettings.of(LabelKind.HANG_TAG, market)),
                            tag == null ? List.of() : TagColours.of(facts))
                    .text();
            if (tag == null) {
                return new Standing(market, State.NONE, List.of());
            }
            List<String> changed =
                    asked.isPresent() ? changed(tag.parts, parts(LabelIssuer.issued(now, 0))) : List.of(OLDER_FORM);
            return new Standing(market, changed.isEmpty() ? State.CURRENT : State.OUT_OF_DATE, changed);
        } catch (LabelBlocked e) {
            return new Standing(
                    market,
                    State.REFUSED,
                    e.pieces().stream()
                            .flatMap(piece -> piece.refusals().stream())
                            .map(refusal -> refusal.found().inEnglish().replaceAll("\\s+", " "))
                            .distinct()
                            .toList());
        }
    }

    private Tag newest(Key key) {
        if (all != null) {
            return all.get(key);
        }
        Tag newest = null;
        for (var user : archive.ledger().referencedBy(Kinds.PIECE.key(key.piece.value()))) {
            if (user.kind().equals(Kinds.ISSUED_PAPER.name())) {
                Tag tag = paper(user.id()).get(key);
                if (newest == null) {
                    newest = tag;
                } else if (tag != null) {
                    newest = newer(newest, tag);
                }
            }
        }
        return newest;
    }

    private synchronized Map<Key, Tag> paper(String id) {
        return papers.computeIfAbsent(id, of -> tags(archive, of));
    }

    /** None of an unreadable paper. */
    private static Map<Key, Tag> tags(Archive archive, String id) {
        return Papers.named(archive.ledger(), List.of(id)).readable().stream()
                .findFirst()
                .map(HangTagStatus::tags)
                .orElse(Map.of());
    }

    private static Map<Key, Tag> tags(IssuedPaper paper) {
        Map<Key, Tag> tags = new HashMap<>();
        Optional<Market> market = CodedChoice.find(Market.values(), paper.market());
        if (paper.kind().equals(LabelKind.HANG_TAG.code()) && market.isPresent()) {
            IssuedPaper head = LabelIssuer.withoutPieces(paper);
            paper.pieces()
                    .forEach(issued -> tags.put(new Key(issued.piece(), market.get()), new Tag(head, parts(issued))));
        }
        return tags;
    }

    private static Tag newer(Tag one, Tag other) {
        int order = one.paper.issuedAt().compareTo(other.paper.issuedAt());
        return order > 0 || order == 0 && one.paper.id().compareTo(other.paper.id()) > 0 ? one : other;
    }

    /** The names of the parts that differ, as in {@link IssuedLabelStatus}. */
    private static List<String> changed(long[] was, long[] now) {
        List<String> changed = new ArrayList<>();
        for (int i = 0; i < now.length; i++) {
            if (was[i] != now[i]) {
                changed.add((i < PARTS.size()
                                ? PARTS.get(i)
                                : i == PARTS.size() ? IssuedLabelStatus.CODE : IssuedLabelStatus.COLOURS)
                        .inEnglish());
            }
        }
        return changed;
    }

    /** A 64-bit hash of each part, then of the QR code and of the colours by name; two different lines collide once in 10¹⁹. */
    private static long[] parts(IssuedPaper.Issued issued) {
        long[] parts = new long[PARTS.size() + 2];
        java.util.Arrays.fill(parts, 1125899906842597L);
        for (IssuedPaper.Line line : issued.lines()) {
            // A part unknown to this program counts too.
            int at = Stream.of(Part.values())
                    .filter(part -> part.code().equals(line.part()))
                    .findFirst()
                    .map(PARTS::indexOf)
                    .orElse(0);
            parts[at] = mixed(mixed(parts[at], line.part()), line.text());
        }
        parts[PARTS.size()] = mixed(parts[PARTS.size()], issued.code());
        for (IssuedPaper.Colour colour : issued.colours()) {
            parts[PARTS.size() + 1] = mixed(parts[PARTS.size() + 1], colour.name());
        }
        return parts;
    }

    private static long mixed(long hash, String text) {
        long mixed = hash;
        for (int i = 0; i < text.length(); i++) {
            mixed = (mixed ^ text.charAt(i)) * 0x100000001b3L;
        }
        return (mixed ^ 0x1f) * 0x100000001b3L;
    }
}
