package tenterbook.colour.compare;

import java.util.List;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.MeasurementResult;

/**
 * Depth of shade of the layers of a stack, relative to the outer ones.
 *
 * @param outer mean K/S of the outer layers; a photograph's proxy
 * @param layers each layer, in order of number
 * @param decay how the depth falls into the stack; refused where too few layers were measured
 */
public record LayerDepths(double outer, List<Depth> layers, MeasurementResult<Decay> decay) {
    public LayerDepths {
        layers = List.copyOf(layers);
    }

    /**
     * One layer.
     *
     * @param number 1 at the first board
     * @param steps layers between it and the nearer board, 0 for an outer layer
     * @param ks K/S, a photograph's proxy
     * @param ratio K/S over that of the outer layers: 1 equal, 0 undyed
     */
    public record Depth(int number, int steps, double ks, double ratio) {}

    /**
     * Depth ∝ e^(−rate × steps), by least squares on ln K/S.
     *
     * @param rate per layer; above 0 where the inner layers are paler
     * @param plausible its 95 % interval (Student's t)
     */
    public record Decay(double rate, Interval plausible) {
        /** Depth of a layer as a share of the next outer one: 1 where nothing is lost. */
        public double keptPerLayer() {
            return Math.exp(-rate);
        }

        public Interval keptPerLayerPlausible() {
            return new Interval(Math.exp(-plausible.high()), Math.exp(-plausible.low()));
        }

        /** Whether the inner layers are paler by more than the scatter of the layers. */
        public boolean innerPaler() {
            return plausible.low() > 0;
        }
    }
}
