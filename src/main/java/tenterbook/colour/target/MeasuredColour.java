package tenterbook.colour.target;

import java.util.Objects;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;

/**
 * A colour measured in a photograph, with its uncertainty.
 *
 * <p>The likely error is the ΔE00 that nine in ten colours of photographs stay below, {@link StatedError}, combined with the
 * light's unevenness over the card as an independent error (root of the sum of squares); a chart whose own patches are off by
 * more states that. It does not include light that differs between card and cloth, glare on the cloth, fluorescence, or a card
 * other than stated.
 *
 * @param lab relative to {@code white}
 * @param observer always 2° (CIE 1931), which sRGB rests on
 * @param spread half of the cloth's pixels lie within this ΔE00 of the mean: the cloth's own unevenness, weave and noise
 * @param pixels how many were measured
 * @param likelyError ΔE00; null if uncalibrated
 * @param note remarks for the maker; never empty for an uncalibrated colour
 */
public record MeasuredColour(
        Lab lab,
        WhitePoint white,
        String observer,
        double spread,
        int pixels,
        Double likelyError,
        Calibration how,
        String note) {
    public static final String TWO_DEGREES = "2°";

    /** @throws IllegalStateException if a likely error is given without a calibration, or the other way round */
    public MeasuredColour {
        Objects.requireNonNull(lab, "lab");
        Objects.requireNonNull(white, "white");
        if ((how == Calibration.NONE) != (likelyError == null)) {
            throw new IllegalStateException("A likely error belongs to a calibrated colour and only to one; found "
                    + likelyError + " with " + how);
        }
    }

    /** For reading: {@code 34.0, -2.0, -25.0 (D65, 2°; one grey card; likely within ΔE00 4.1)}. */
    public String text() {
        return likelyError == null
                ? Message.of("card.measured", "lab", lab.text(), "white", white, "observer", observer, "how", how)
                        .inEnglish()
                : Message.of(
                                "card.measured-likely",
                                "lab",
                                lab.text(),
                                "white",
                                white,
                                "observer",
                                observer,
                                "how",
                                how,
                                "error",
                                NumberWords.decimals(likelyError, 1))
                        .inEnglish();
    }
}
