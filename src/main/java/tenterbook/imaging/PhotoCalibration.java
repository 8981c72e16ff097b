package tenterbook.imaging;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.Calibration;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.ChartCorrection;
import tenterbook.colour.target.ChartReference;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/**
 * How one photograph's colours are corrected, with all that is needed to do it again. A record of its own beside the
 * photograph: the photograph's record and its uncalibrated palette stay as they were, and calibrating again makes a
 * new revision of this record.
 *
 * @param photo whose colours
 * @param how by what
 * @param cards the cards in the picture, each with its corners; one for a grey card or a chart, white then black for two
 * @param matrix nine numbers, row by row, on linear light
 * @param offset three numbers
 * @param tone power before the matrix, see {@link Correction}; null in records of before 2026-11-28, which have none
 * @param likelyError ΔE00 that nine in ten colours stay below; in a record without half error a typical ΔE00, as {@code tenterbook.colour.target.MeasuredColour} explains
 * @param halfError ΔE00 for one half of colours; null in records of before 2026-11-28
 * @param profile photograph by the same camera whose chart gave tone and matrix; null where no camera profile was used
 * @param note what a person should know, such as patches left out; may be empty
 * @param at when it was calibrated
 * @param by who looked at the corners
 */
public record PhotoCalibration(
        Digest photo,
        Calibration how,
        List<MarkedCard> cards,
        List<Double> matrix,
        List<Double> offset,
        Double tone,
        Double likelyError,
        Double halfError,
        @Nullable Digest profile,
        String note,
        Instant at,
        String by) {
    /**
     * A card and where it lies.
     *
     * @param corners four, in parts of the upright picture
     * @param name as the person chose it
     * @param known its colour, CIELAB, D65, 2°; null for a chart, whose name says which table
     */
    public record MarkedCard(List<Corner> corners, String name, Lab known) {
        public MarkedCard {
            corners = new CardOutline(corners).corners();
            Objects.requireNonNull(name, "name");
        }

        public static MarkedCard of(CardOutline outline, KnownCard card) {
            return new MarkedCard(outline.corners(), card.name(), card.lab());
        }
    }

    /** @throws IllegalArgumentException if it corrects nothing, or has no card */
    public PhotoCalibration {
        Objects.requireNonNull(photo, "photo");
        Objects.requireNonNull(likelyError, "likelyError");
        Objects.requireNonNull(at, "at");
        cards = List.copyOf(cards);
        matrix = List.copyOf(matrix);
        offset = List.copyOf(offset);
        note = note == null ? "" : note;
        if ((how == Calibration.CAMERA_PROFILE) != (profile != null)) {
            throw new IllegalStateException(
                    "A camera profile has the photograph of its chart, and nothing else has one; found " + profile
                            + " with " + how);
        }
        if (how == Calibration.NONE || cards.isEmpty()) {
            throw Refusal.of("photo.calibration-without-card", "photo", photo.hex());
        }
    }

    /** From a grey card, or from a white and a black one. */
    public static PhotoCalibration of(
            Digest photo, Correction correction, List<MarkedCard> cards, Instant at, String by) {
        return of(photo, correction, cards, null, at, by);
    }

    /** The same with the chart of another photograph by the same camera, where {@code profile} is one. */
    public static PhotoCalibration of(
            Digest photo,
            Correction correction,
            List<MarkedCard> cards,
            @Nullable Digest profile,
            Instant at,
            String by) {
        return new PhotoCalibration(
                photo,
                correction.how(),
                cards,
                correction.matrix(),
                correction.offset(),
                correction.tone(),
                correction.likelyError(),
                correction.halfError(),
                profile,
                correction.note(),
                at,
                by);
    }

    /** From a chart. */
    public static PhotoCalibration of(
            Digest photo, ChartCorrection chart, CardOutline outline, ChartReference table, Instant at, String by) {
        MarkedCard card = new MarkedCard(outline.corners(), table.toString(), null);
        return of(photo, chart.correction(), List.of(card), at, by);
    }

    /** The correction that was kept, to measure with. */
    public Correction correction() {
        return new Correction(how, matrix, offset, tone == null ? 1 : tone, likelyError, halfError, note);
    }
}
