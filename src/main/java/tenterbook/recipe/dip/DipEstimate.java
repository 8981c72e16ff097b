package tenterbook.recipe.dip;

import tenterbook.colour.space.Interval;

/**
 * The depth of a piece as a curve has it.
 *
 * @param value K/S, best estimate
 * @param plausible where nine in ten pieces lie
 */
public record DipEstimate(double value, Interval plausible) {}
