package tenterbook.documents.kind;

import java.util.Set;
import tenterbook.documents.Block;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Unit;
import tenterbook.words.Written;

/** The length that a scale bar stands for: a whole number of the unit in which the piece was measured. */
final class ScaleLength {
    private static final double[] CENTIMETRES = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200};
    private static final double[] INCHES = {0.25, 0.5, 1, 2, 3, 6, 12, 24, 36, 72};

    /** Of the picture's width; longer, and it is no shorter to count than the cloth itself. */
    private static final double MOST = 0.4;

    private ScaleLength() {}

    /**
     * @param widthMm what the picture's whole width spans, above 0
     * @param measuredIn any unit of length; inches, feet and yards give a bar in inches, others one in centimetres
     */
    static Block.ScaleBar bar(double widthMm, Unit measuredIn) {
        boolean customary = Set.of(Unit.INCH, Unit.FOOT, Unit.YARD).contains(measuredIn);
        Unit unit = customary ? Unit.INCH : Unit.CENTIMETRE;
        double[] lengths = customary ? INCHES : CENTIMETRES;
        double chosen = lengths[0];
        for (double length : lengths) {
            chosen = part(length, unit, widthMm) <= MOST ? length : chosen;
        }
        Written words = NumberWords.plain(chosen);
        return new Block.ScaleBar(
                Math.min(1, part(chosen, unit, widthMm)), words.onPaper() + NumberWords.UNIT_SPACE + unit.symbol());
    }

    private static double part(double length, Unit unit, double widthMm) {
        return unit.convert(length, Unit.MILLIMETRE) / widthMm;
    }
}
