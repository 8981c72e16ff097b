package tenterbook.colour.compare;

import tenterbook.colour.space.Interval;
import tenterbook.colour.space.Lab;

/**
 * How one marked part of a cloth changed. All intervals 95 %, over the tiles the part was cut into: they tell how even
 * the change is, not whether light and camera were alike.
 *
 * @param before mean of the earlier picture, CIELAB of that picture
 * @param after mean of the later one, over the same cloth
 * @param change of the means, after minus before
 * @param lightness where ΔL* lies; above 0 where paler
 * @param chroma where ΔC* lies; below 0 where duller
 * @param cie1976 where ΔE*ab lies; from 0 where no part of the change is beyond its scatter
 * @param ciede2000 where ΔE00 lies, likewise
 * @param spread standard deviation of ΔE*ab of the tiles about the mean change: 0 for a change alike everywhere
 * @param tiles how many tiles were compared
 * @param grade the grey-scale estimate from ΔE*ab
 * @param a where Δa* lies; above 0 where redder
 * @param b where Δb* lies; above 0 where yellower
 */
public record RegionChange(
        Lab before,
        Lab after,
        ColourChange change,
        Interval lightness,
        Interval chroma,
        Interval cie1976,
        Interval ciede2000,
        double spread,
        int tiles,
        GreyScale.Estimate grade,
        Interval a,
        Interval b) {

    /** Whether the change is beyond its own scatter and the allowance. */
    public boolean changed() {
        return cie1976.low() > 0;
    }
}
