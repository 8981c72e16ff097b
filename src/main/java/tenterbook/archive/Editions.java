package tenterbook.archive;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.archive.record.PieceRecord;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.piece.edition.EditionPart;
import tenterbook.piece.edition.EditionPlace;
import tenterbook.piece.edition.InEdition;
import tenterbook.words.Message;

/** Which pieces belong to an edition or a set, and what may not be among them. One is used for one save or one page: it reads each edition once. */
public final class Editions {
    private final Archive archive;
    private final Map<String, List<Saved<Piece>>> known = new HashMap<>();

    public Editions(Archive archive) {
        this.archive = archive;
    }

    Ledger ledger() {
        return archive.ledger();
    }

    /** An edition larger than it was when the first of it was sold. */
    public record Growth(int from, int to) {}

    /** Names of all editions and sets with how many pieces each has, in order of name; spelt as the piece of the first number does. */
    public Map<String, Integer> names() {
        Map<String, String> spelt = new TreeMap<>();
        Map<String, Integer> counts = new TreeMap<>();
        archive.ledger().texts(Kinds.PIECE, PieceRecord.EDITION_NAME).values().forEach(name -> {
            counts.merge(spelt.computeIfAbsent(InEdition.key(name), key -> name), 1, Integer::sum);
        });
        return counts;
    }

    /** The pieces in use of an edition or set, by their place in it, then by number; none for an empty name. */
    public List<Saved<Piece>> pieces(String name) {
        String key = InEdition.key(name);
        return key.isEmpty() ? List.of() : known.computeIfAbsent(key, this::read);
    }

    private List<Saved<Piece>> read(String key) {
        Comparator<Saved<Piece>> inOrder = Comparator.comparing(
                each -> each.record().placeInEdition().map(EditionPlace::number).orElse(Integer.MAX_VALUE));
        return archive.ledger().texts(Kinds.PIECE, PieceRecord.EDITION_NAME).entrySet().stream()
                .filter(each -> InEdition.key(each.getValue()).equals(key))
                .flatMap(each -> archive.ledger().find(Kinds.PIECE, each.getKey()).stream())
                .sorted(inOrder.thenComparing(each -> each.record().number().value()))
                .toList();
    }

    /** Whether it was ever sold, also where it came back. */
    public static boolean sold(Piece piece) {
        return piece.status() == Status.SOLD
                || piece.events().stream().map(Event::kind).anyMatch(EventKind.SOLD::equals);
    }

    /**
     * Adds a fault where another piece of its edition has its place, or where it makes the edition larger after the first sale and nobody confirmed
     * that ({@link InEdition#enlargedTo}). What was recorded so before is not asked about again.
     *
     * @param before the piece as it was; null for a new one
     */
    void check(@Nullable Piece before, Piece after, Faults faults) {
        boolean same = before != null
                && before.edition().equals(after.edition())
                && before.inEdition().key().equals(after.inEdition().key());
        Optional<EditionPlace> place = after.placeInEdition();
        if (same || place.isEmpty()) {
            return;
        }
        List<Piece> others = others(after);
        others.stream()
                .filter(other -> taken(place.get(), other))
                .findFirst()
                .ifPresent(other -> faults.add(
                        "edition",
                        Message.of(
                                "edition.taken",
                                "piece",
                                other.shown(),
                                "edition",
                                other.edition(),
                                "name",
                                after.inEdition().name())));
        growth(before, after, others)
                .filter(growth -> !Objects.equals(after.inEdition().enlargedTo(), growth.to()))
                .ifPresent(growth ->
                        faults.add("edition", Message.of("edition.grows", "from", growth.from(), "to", growth.to())));
    }

    private List<Piece> others(Piece piece) {
        return pieces(piece.inEdition().name()).stream()
                .map(Saved::record)
                .filter(other -> !other.number().equals(piece.number()))
                .toList();
    }

    private static boolean taken(EditionPlace place, Piece other) {
        return place.number() != null
                && other.placeInEdition()
                        .filter(theirs ->
                                theirs.part() == place.part() && place.number().equals(theirs.number()))
                        .isPresent();
    }

    /** What makes an edition larger after its first sale; empty where nothing does. */
    public Optional<Growth> growth(@Nullable Piece before, Piece after) {
        return growth(before, after, others(after));
    }

    private static Optional<Growth> growth(@Nullable Piece before, Piece after, List<Piece> others) {
        EditionPlace place = after.placeInEdition().orElse(null);
        if (place == null || place.part() != EditionPart.COPY || place.size() == null) {
            return Optional.empty();
        }
        List<Piece> all = new ArrayList<>(others);
        Stream.ofNullable(before)
                .filter(was -> was.inEdition().key().equals(after.inEdition().key()))
                .forEach(all::add);
        int known = all.stream().mapToInt(Editions::size).max().orElse(0);
        int first = all.stream()
                .map(each -> each.inEdition().enlargedFrom())
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(known);
        boolean sold = sold(after) || all.stream().anyMatch(Editions::sold);
        return sold && known > 0 && place.size() > known
                ? Optional.of(new Growth(first, place.size()))
                : Optional.empty();
    }

    /** How many copies the edition has as the piece states it; 0 where it does not. */
    public static int size(Piece piece) {
        if (piece.inEdition().enlargedTo() != null) {
            return piece.inEdition().enlargedTo();
        }
        return piece.placeInEdition()
                .filter(place -> place.part() == EditionPart.COPY && place.size() != null)
                .map(EditionPlace::size)
                .orElse(0);
    }

    /** The piece with the growth of the edition that it belongs to now: a copy made later states it like the others, and one that left it does not. */
    public Piece settled(@Nullable Piece before, Piece after) {
        InEdition mine = after.inEdition();
        boolean left = before != null
                && !before.inEdition().key().equals(mine.key())
                && Objects.equals(before.inEdition().enlargedTo(), mine.enlargedTo());
        InEdition bare = new InEdition(mine.name(), null, null);
        if (mine.enlarged() && !left) {
            return after;
        }
        return others(after).stream()
                .map(Piece::inEdition)
                .filter(InEdition::enlarged)
                .max(Comparator.comparing(InEdition::enlargedTo))
                .map(grown -> after.with(bare.enlarged(grown.enlargedFrom(), grown.enlargedTo())))
                .orElseGet(() -> left ? after.with(bare) : after);
    }

    /** Writes that an edition was enlarged into its other pieces too, as they are now, so that it stands on the papers of each. */
    public void spread(LedgerTransaction act, Piece piece) {
        InEdition grown = piece.inEdition();
        if (grown.enlarged()) {
            for (Saved<Piece> other : read(grown.key())) {
                InEdition theirs = other.record().inEdition();
                boolean same = Objects.equals(theirs.enlargedFrom(), grown.enlargedFrom())
                        && Objects.equals(theirs.enlargedTo(), grown.enlargedTo());
                if (!other.record().number().equals(piece.number()) && !same) {
                    Piece enlarged = other.record().with(theirs.enlarged(grown.enlargedFrom(), grown.enlargedTo()));
                    String note = Message.of("edition.enlarged-note", "to", grown.enlargedTo())
                            .inEnglish();
                    act.save(Kinds.PIECE, enlarged, other.version(), note);
                }
            }
        }
    }
}
