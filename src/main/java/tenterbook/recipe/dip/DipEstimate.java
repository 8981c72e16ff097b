package tenterbook.recipe.dip;

import tenterbook.colour.space.Interval;

/**
 * A figure from a curve.
 *
 * @param value best estimate; may be infinite where no number of dips suffices
 * @param plausible 95 % interval; an end not bounded by the points is infinite
 */
public record DipEstimate(double value, Interval plausible) {}
