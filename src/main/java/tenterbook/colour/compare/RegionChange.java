package tenterbook.colour.compare;

import tenterbook.colour.space.Interval;
import tenterbook.colour.space.Lab;

/**
 * The change of one marked part of a cloth. All intervals are 95 %, over the tiles of the part: they reflect how even the
 * change is, not whether light and camera were the same.
 *
 * @param before mean of the earlier picture, CIELAB of that picture
 * @param after mean of the later one, over the same cloth
 * @param change of the means, after minus before
 * @param lightness interval of ΔL*; above 0 where paler
 * @param ciede2000 interval of ΔE00; from 0 where no component exceeds its scatter
 * @param grade the grey-scale estimate from ΔE*ab
 * @param a interval of Δa*; above 0 where redder
 * @param b interval of Δb*; above 0 where yellower
 */
public record RegionChange(
        Lab before,
        Lab after,
        ColourChange change,
        Interval lightness,
        Interval ciede2000,
        GreyScale.Estimate grade,
        Interval a,
        Interval b) {}
