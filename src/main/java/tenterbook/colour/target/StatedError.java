package tenterbook.colour.target;

import java.util.List;
import tenterbook.measure.Threshold;

/**
 * How far a colour measured by each method is off, ΔE00. Found on a classic chart of 24 patches in seven photographs by four
 * cameras (two phones, a third in sun, a reflex camera), in sRGB files; the chart's own tolerance and age are unknown and
 * included. Grey: neutral 5 as the card. White and black: patches 19 and 24. Chart: each patch by a fit without it. Leaving
 * one camera out, the second figure holds for 86 to 90 % of its patches. Clipped and uneven patches are left out, and so is an
 * industrial camera: its chart is refused, and a card there has the errors of {@link #STRONG_CAST}. The test {@code StatedErrorTest} measures them anew.
 *
 * @param half for one half of the patches
 * @param nineInTen for nine in ten of them
 * @param betweenTwo by how much nine in ten of the patches differ between two photographs, both corrected by this method
 *     (grey and chart from an earlier trial on seventeen photographs; 8.4 and 4.8 in these, the chart judged by its own patches)
 * @param patches how many patches were compared with the table, over all photographs
 * @param cameras by how many cameras
 */
public record StatedError(double half, double nineInTen, double betweenTwo, int patches, int cameras) {
    private static final StatedError GREY = measured("calibration-grey-card", 134, 4);
    private static final StatedError WHITE_AND_BLACK = measured("calibration-white-and-black", 127, 4);
    private static final StatedError CHART = measured("calibration-chart", 141, 4);

    private static final StatedError CAMERA_PROFILE = measured("calibration-camera-profile", 91, 2);

    /** A card whose channels need gains more than twice apart: one industrial camera of this kind was measured, by a grey card. */
    static final StatedError STRONG_CAST = strongCast();

    private static StatedError measured(String id, int patches, int cameras) {
        List<Double> figures = Threshold.numbers(id);
        return new StatedError(figures.get(0), figures.get(1), figures.get(2), patches, cameras);
    }

    private static StatedError strongCast() {
        List<Double> figures = Threshold.numbers("calibration-strong-cast");
        return new StatedError(figures.get(0), figures.get(1), 0, 22, 1);
    }

    /** @throws IllegalStateException for {@link Calibration#NONE}, of which nothing is known */
    public static StatedError of(Calibration how) {
        return switch (how) {
            case GREY_CARD -> GREY;
            case WHITE_AND_BLACK -> WHITE_AND_BLACK;
            case CHART -> CHART;
            case CAMERA_PROFILE -> CAMERA_PROFILE;
            case NONE -> throw new IllegalStateException("No error is known without a calibration");
        };
    }

    /**
     * What two photographs of an unchanged cloth may differ by in nine of ten cases, ΔE00; two photographs of a method differ
     * by its {@link #betweenTwo}, unless their own error is larger than the method's.
     */
    public static double between(Correction one, Correction two) {
        return Math.hypot(share(one), share(two));
    }

    private static double share(Correction correction) {
        StatedError method = of(correction.how());
        return method.betweenTwo / Math.sqrt(2) * Math.max(1, correction.likelyError() / method.nineInTen);
    }
}
