package tenterbook.colour.target;

import java.util.Locale;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How a measured colour was corrected for light and camera. */
public enum Calibration implements Worded {
    /** Not corrected: the number is the picture's, not the cloth's. */
    NONE,
    GREY_CARD,
    WHITE_AND_BLACK,
    CHART,
    /** A grey card, with tone and matrix from a chart in another photograph by the same camera. */
    CAMERA_PROFILE;

    @Override
    public Message word() {
        return Message.of("card.calibration." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
