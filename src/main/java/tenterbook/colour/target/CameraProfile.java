package tenterbook.colour.target;

import tenterbook.colour.space.LinearRgb;
import tenterbook.words.Message;

/**
 * What a photograph of a chart shows of its camera: tone and matrix, which stay when the light changes. A grey card in another
 * photograph by the same camera gives the light of that one, as a gain for each channel between the two (von Kries).
 */
public final class CameraProfile {
    private final Correction chart;

    /** @throws IllegalStateException if it was not found from a chart */
    public CameraProfile(Correction chart) {
        if (chart.how() != Calibration.CHART) {
            throw new IllegalStateException("A camera profile comes from a chart; found " + chart.how());
        }
        this.chart = chart;
    }

    /**
     * The correction of another photograph by this camera, which gives its card the known colour. Each of its two errors is the
     * greater of the method's and the chart's own, combined with that of the card.
     *
     * @throws CardRefused if the reading has a fault, is not neutral, or has a cast too strong for the method to be known
     */
    public Correction with(CardReading reading, KnownCard card) {
        Correction byCard = Correction.byGrey(reading, card);
        if (!byCard.note().isEmpty()) {
            throw new CardRefused(Message.of("card.profile-strong-cast"));
        }
        Matrix3 matrix = Matrix3.of(chart.matrix());
        LinearRgb seen = reading.mean();
        LinearRgb known = LinearRgb.of(card.lab());
        double[] wanted = matrix.inverse().times(known.red(), known.green(), known.blue());
        double[] gains = {
            wanted[0] / Correction.toned(seen.red(), chart.tone()),
            wanted[1] / Correction.toned(seen.green(), chart.tone()),
            wanted[2] / Correction.toned(seen.blue(), chart.tone())
        };
        if (!(Math.min(gains[0], Math.min(gains[1], gains[2])) > 0)) {
            throw new CardRefused(Message.of("card.profile-not-of-this-card"));
        }
        StatedError stated = StatedError.of(Calibration.CAMERA_PROFILE);
        double cardError = Correction.cardError(reading, card);
        return new Correction(
                Calibration.CAMERA_PROFILE,
                matrix.times(Matrix3.diagonal(gains[0], gains[1], gains[2])).rows(),
                Correction.NONE.offset(),
                chart.tone(),
                Math.hypot(Math.max(stated.nineInTen(), chart.likelyError()), cardError),
                Math.hypot(Math.max(stated.half(), chart.halfError() == null ? 0 : chart.halfError()), cardError),
                "");
    }
}
