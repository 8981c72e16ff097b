package tenterbook.typeset;

/** Millimetres and points; 72 points are 25.4 mm. */
public final class Mm {
    private Mm() {}

    public static double points(double mm) {
        return mm * 72 / 25.4;
    }

    public static double of(double points) {
        return points * 25.4 / 72;
    }
}
