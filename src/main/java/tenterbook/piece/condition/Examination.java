package tenterbook.piece.condition;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Refusal;

/**
 * The condition of a piece on one day.
 *
 * @param place of the examination
 * @param party who examined it, from the archive's people; null where it was the maker or is not recorded
 * @param examiner the person's name
 * @param reason null where not recorded
 * @param means as in 'by eye, raking light, 10× magnifier'
 * @param overall null where not recorded
 * @param summary one or two sentences on the whole
 * @param length as measured then, as a length; cloth shrinks and stretches
 * @param width likewise
 * @param zones parts of the piece and how far each was examined
 * @param handling advice for handling
 * @param light advice for light and display
 * @param packing advice for packing and transport
 * @param earlier the examination that this one was compared with; null for none
 * @param handedOver who handed it over; {@link Signatory#NOBODY} where it was not handed over
 */
public record Examination(
        ExaminationId id,
        PieceNumber piece,
        PartialDate when,
        String place,
        @Nullable PartyId party,
        String examiner,
        @Nullable Reason reason,
        String means,
        @Nullable Overall overall,
        String summary,
        Quantity length,
        Quantity width,
        List<ExaminedPhoto> photos,
        List<ZoneSeen> zones,
        List<Observation> observations,
        String handling,
        String light,
        String packing,
        @Nullable ExaminationId earlier,
        Signatory handedOver,
        Signatory received,
        String notes) {
    /** Earliest first; those without a known day come before all others, and ties go by name. */
    public static final Comparator<Examination> IN_TIME = Comparator.comparing((Examination each) -> each.when.known()
                    ? (each.when.from() == null ? each.when.to() : each.when.from())
                    : java.time.LocalDate.MIN)
            .thenComparing(each -> each.id.value());

    /**
     * @throws IllegalArgumentException if it names no piece, two observations or two photographs are the same, or a mark
     *     stands on a photograph that is not among {@code photos}
     */
    public Examination {
        if (id == null || piece == null) {
            throw Refusal.of("condition.unnamed");
        }
        when = when == null ? PartialDate.UNRECORDED : when;
        place = place == null ? "" : place.strip();
        examiner = examiner == null ? "" : examiner.strip();
        means = means == null ? "" : means.strip();
        summary = summary == null ? "" : summary.strip();
        length = length == null ? Quantity.UNRECORDED : length;
        width = width == null ? Quantity.UNRECORDED : width;
        photos = photos == null ? List.of() : List.copyOf(photos);
        zones = zones == null ? List.of() : List.copyOf(zones);
        observations = observations == null
                ? List.of()
                : observations.stream()
                        .sorted(Comparator.comparingInt(Observation::number))
                        .toList();
        handling = handling == null ? "" : handling.strip();
        light = light == null ? "" : light.strip();
        packing = packing == null ? "" : packing.strip();
        handedOver = handedOver == null ? Signatory.NOBODY : handedOver;
        received = received == null ? Signatory.NOBODY : received;
        notes = notes == null ? "" : notes.strip();
        if (id.equals(earlier)) {
            throw Refusal.of("condition.with-itself");
        }
        fit(photos, observations);
    }

    private static void fit(List<ExaminedPhoto> photos, List<Observation> observations) {
        Set<Digest> there = new HashSet<>();
        for (ExaminedPhoto photo : photos) {
            if (!there.add(photo.photo())) {
                throw Refusal.of(
                        "condition.photograph-twice",
                        "photograph",
                        photo.photo().brief());
            }
        }
        Set<Integer> numbers = new TreeSet<>();
        for (Observation observation : observations) {
            if (!numbers.add(observation.number())) {
                throw Refusal.of("condition.number-twice", "number", observation.number());
            }
            for (PhotoMark mark : observation.marks()) {
                if (!there.contains(mark.photo())) {
                    throw Refusal.of("condition.mark-without-photograph", "number", observation.number());
                }
            }
        }
    }

    /** Observations that were not found gone. */
    public List<Observation> present() {
        return observations.stream().filter(each -> !each.gone()).toList();
    }

    /** The greatest number of an observation; 0 where there is none. */
    public int greatestNumber() {
        return observations.stream().mapToInt(Observation::number).max().orElse(0);
    }
}
