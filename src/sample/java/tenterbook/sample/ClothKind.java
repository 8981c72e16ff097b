package tenterbook.sample;

/** How each of the studio's cloths looks to a camera. The figures are chosen by eye; they are not measurements. */
enum ClothKind {
    /** Silk habotai. */
    SH(0.30, 0.28, 0.03, 0.012, 0.55, 0.10, 0.06, 0, 0.037),
    /** Silk organza. */
    SO(0.34, 0.34, 0.05, 0.018, 0.50, 0.06, 0.05, 0.42, 0.044),
    /** Linen voile. */
    LV(0.62, 0.66, 0.12, 0.085, 0.85, 0.01, 0.10, 0.12, 0.060),
    /** Cotton lawn. */
    CL(0.36, 0.36, 0.05, 0.022, 0.75, 0, 0.07, 0, 0.048),
    /** Hemp gauze. */
    HG(0.86, 0.92, 0.20, 0.11, 1.0, 0, 0.13, 0.20, 0.068),
    /** Wool challis. */
    WC(0.50, 0.52, 0.07, 0.03, 1.25, 0, 0.05, 0, 0.085);

    final double warpPitchMm;
    final double weftPitchMm;
    /** Light and dark of single threads, share of reflectance. */
    final double threadRelief;
    /** Thick places in the yarn, share of reflectance. */
    final double slub;
    /** How far a dyed edge runs from sharp to gone. */
    final double featherMm;

    final double sheen;
    /** Unevenness of uptake from thread to thread. */
    final double threadUptake;
    /** Share of what lies behind that shows through. */
    final double sheer;
    /** Fine unevenness of the surface, share of reflectance. */
    final double fuzz;

    ClothKind(
            double warpPitchMm,
            double weftPitchMm,
            double threadRelief,
            double slub,
            double featherMm,
            double sheen,
            double threadUptake,
            double sheer,
            double fuzz) {
        this.warpPitchMm = warpPitchMm;
        this.weftPitchMm = weftPitchMm;
        this.threadRelief = threadRelief;
        this.slub = slub;
        this.featherMm = featherMm;
        this.sheen = sheen;
        this.threadUptake = threadUptake;
        this.sheer = sheer;
        this.fuzz = fuzz;
    }
}
