package tenterbook.sample;

/** Threads and slubs of a cloth at a given size in the picture; threads finer than the pixels are left out. */
final class Weave {
    private final ClothKind kind;
    private final Noise noise;
    private final double warpSeen;
    private final double weftSeen;

    Weave(ClothKind kind, long seed, double pixelsPerMm) {
        this.kind = kind;
        this.noise = new Noise(seed + 71);
        this.warpSeen = DyedCloth.smooth((kind.warpPitchMm * pixelsPerMm - 1.7) / 1.6);
        this.weftSeen = DyedCloth.smooth((kind.weftPitchMm * pixelsPerMm - 1.7) / 1.6);
    }

    /** Light returned relative to a flat cloth, about 1. */
    double relief(double x, double y) {
        double wanderX = x + 0.22 * noise.at(y / 14, x / 60);
        double wanderY = y + 0.22 * noise.at(x / 14 + 50, y / 60);
        double slubs = kind.slub
                * (0.75 * peak(noise.at(wanderX / 38, wanderY / (kind.weftPitchMm * 1.6)))
                        + 0.6 * peak(noise.at(wanderX / (kind.warpPitchMm * 1.6) + 7, wanderY / 46)));
        double fibre = kind.fuzz * (noise.at(x / 0.42 + 3, y / 1.5) + noise.at(x / 1.5, y / 0.42 + 11));
        double threads = 0;
        if (warpSeen + weftSeen > 0) {
            double a = wanderX / kind.warpPitchMm;
            double b = wanderY / kind.weftPitchMm;
            int parity = (((int) Math.floor(a) + (int) Math.floor(b)) & 1) == 0 ? 1 : -1;
            double ca = Math.cos(2 * Math.PI * a);
            double cb = Math.cos(2 * Math.PI * b);
            threads = -kind.threadRelief
                    * (warpSeen * ca * (0.75 + 0.35 * parity) + weftSeen * cb * (0.75 - 0.35 * parity));
        }
        return 1 + slubs + fibre + threads;
    }

    /** Uptake of dye relative to the even cloth, about 1, from thread to thread. */
    double uptake(double x, double y) {
        return 1
                + kind.threadUptake
                        * (0.7 * noise.at(x / (kind.warpPitchMm * 2), y / 70 + 9)
                                + 0.7 * noise.at(x / 60 + 30, y / (kind.weftPitchMm * 2)));
    }

    private static double peak(double n) {
        return n > 0 ? n * n * 2.2 - 0.12 : -0.12 - n * n * 0.5;
    }
}
