package tenterbook.piece;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.edition.EditionPlace;
import tenterbook.piece.edition.InEdition;
import tenterbook.piece.label.LabelFacts;
import tenterbook.recipe.ClampingId;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A finished piece. Only the number is required; everything else may come later or never.
 *
 * @param number its first one: its name in the archive for ever, whatever number is shown since; see {@link #shown}
 * @param category null where not recorded, as are status, holder and price
 * @param otherTitle the title in another language or script
 * @param length the longer side, or the height as hung, as a length
 * @param width the other side, as a length
 * @param mass of the finished piece
 * @param finished when it was unclamped, washed and done
 * @param edition as typed, as in '2 of 9'; empty where single; read by {@link #placeInEdition}
 * @param made the clampings it passed through, in order of time; empty where not recorded
 * @param holder who has it now, or null
 * @param place where it is kept or hangs
 * @param price asked, or null
 * @param trims parts other than cloth, as in 'horn toggle'
 * @param particulars what papers state beside that
 */
public record Piece(
        PieceNumber number,
        String title,
        String otherTitle,
        @Nullable Category category,
        Quantity length,
        Quantity width,
        Quantity mass,
        PartialDate finished,
        String edition,
        List<MadeIn> made,
        @Nullable Status status,
        @Nullable PartyId holder,
        String place,
        @Nullable Money price,
        String trims,
        List<PiecePhoto> photos,
        List<Fault> faults,
        List<CareTest> tests,
        List<Event> events,
        String notes,
        Particulars particulars) {
    public Piece {
        title = title == null ? "" : title.strip();
        otherTitle = otherTitle == null ? "" : otherTitle.strip();
        length = length == null ? Quantity.UNRECORDED : length;
        width = width == null ? Quantity.UNRECORDED : width;
        mass = mass == null ? Quantity.UNRECORDED : mass;
        finished = finished == null ? PartialDate.UNRECORDED : finished;
        edition = edition == null ? "" : edition.strip();
        made = made == null ? List.of() : List.copyOf(made);
        place = place == null ? "" : place.strip();
        trims = trims == null ? "" : trims.strip();
        photos = photos == null ? List.of() : List.copyOf(photos);
        faults = faults == null ? List.of() : List.copyOf(faults);
        tests = tests == null ? List.of() : List.copyOf(tests);
        events = events == null ? List.of() : List.copyOf(events);
        notes = notes == null ? "" : notes.strip();
        particulars = particulars == null ? Particulars.NONE : particulars;
    }

    /** The state of the piece: 1, plus one for each time it was dyed again. */
    public int state() {
        return Math.max(1, made.size());
    }

    /** The same piece after one more clamping, its layers not recorded. */
    public Piece madeAlsoIn(ClampingId clamping) {
        List<MadeIn> more = new ArrayList<>(made);
        more.add(new MadeIn(clamping, Layers.UNRECORDED, ""));
        return with(more, photos, particulars);
    }

    /** The number it has now, as pages and papers show it. */
    public PieceNumber shown() {
        List<PieceNumber> later = particulars.laterNumbers();
        return later.isEmpty() ? number : later.get(later.size() - 1);
    }

    /** Every number it has or had, the first one first. */
    public Set<PieceNumber> numbers() {
        Set<PieceNumber> all = new LinkedHashSet<>();
        all.add(number);
        all.addAll(particulars.laterNumbers());
        return all;
    }

    /** The same piece with another number from now on; those before still lead to it. */
    public Piece renumbered(PieceNumber other) {
        List<PieceNumber> later = new ArrayList<>(particulars.laterNumbers());
        later.remove(other);
        later.add(other);
        return with(made, photos, particulars.with(later));
    }

    /** Its place in its edition or set; empty where none is recorded or the text is not read as one. */
    public Optional<EditionPlace> placeInEdition() {
        return EditionPlace.read(edition);
    }

    public InEdition inEdition() {
        return particulars.edition();
    }

    public Piece with(InEdition other) {
        return with(made, photos, particulars.with(other));
    }

    /** The edition as papers state it, in their language: its place, as typed only where it is not read as one. */
    public Written editionOnPapers() {
        return enlarged(placeInEdition().map(EditionPlace::onPapers).orElse(conventions -> edition));
    }

    /** The edition as typed. */
    public Written editionAsTyped() {
        return enlarged(conventions -> edition);
    }

    /** With the sentence that the edition was enlarged after its first sale, where it was; nothing where none is recorded. */
    private Written enlarged(Written place) {
        return edition.isEmpty() || !inEdition().enlarged()
                ? place
                : Message.of(
                        "edition.on-papers",
                        "edition",
                        place,
                        "from",
                        inEdition().enlargedFrom(),
                        "to",
                        inEdition().enlargedTo());
    }

    /** What the rules of labels ask of it. */
    public LabelFacts label() {
        return particulars.label();
    }

    public Piece with(LabelFacts label) {
        return with(made, photos, particulars.with(label));
    }

    /**
     * Why a photograph cannot show that state of the piece; empty where it can.
     *
     * @param shown from 1; null where nobody says, which does for a piece that was never dyed again
     */
    public Optional<Message> stateRefused(@Nullable Integer shown) {
        int states = Math.max(1, state());
        if (shown == null) {
            return states > 1
                    ? Optional.of(Message.of("giving.which-state", "piece", number, "states", states))
                    : Optional.empty();
        }
        return shown < 1 || shown > states
                ? Optional.of(Message.of("giving.states", "piece", number, "states", states))
                : Optional.empty();
    }

    public Piece withPhotos(List<PiecePhoto> others) {
        return with(made, others, particulars);
    }

    private Piece with(List<MadeIn> clampings, List<PiecePhoto> pictures, Particulars more) {
        return copy(clampings, pictures, more, events, status, holder, place, price);
    }

    /** The same piece with other events, what was typed of its status and holder, its place and its price. */
    public Piece withEvents(
            List<Event> all,
            @Nullable Status typedStatus,
            @Nullable PartyId typedHolder,
            String nowAt,
            @Nullable Money asked) {
        return copy(made, photos, particulars, all, typedStatus, typedHolder, nowAt, asked);
    }

    private Piece copy(
            List<MadeIn> clampings,
            List<PiecePhoto> pictures,
            Particulars more,
            List<Event> all,
            @Nullable Status typedStatus,
            @Nullable PartyId typedHolder,
            String nowAt,
            @Nullable Money asked) {
        return new Piece(
                number,
                title,
                otherTitle,
                category,
                length,
                width,
                mass,
                finished,
                edition,
                clampings,
                typedStatus,
                typedHolder,
                nowAt,
                asked,
                trims,
                pictures,
                faults,
                tests,
                all,
                notes,
                more);
    }
}
