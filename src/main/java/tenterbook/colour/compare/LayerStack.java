package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hipparchus.stat.regression.SimpleRegression;
import tenterbook.colour.compare.DepthOfShade.Channel;
import tenterbook.colour.compare.LayerDepths.Decay;
import tenterbook.colour.compare.LayerDepths.Depth;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.colour.space.SrgbCurve;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Compares the layers of one clamped stack: depth from the boards inwards, and similarity of neighbours. Dye reaches the stack
 * from both boards, so a layer's position is counted from the nearer one.
 */
public final class LayerStack {
    private static final int LEAST_STEPS = 3;
    private static final double OUTSIDE = 0.05;
    /** Standard deviation of L* below which a panel has no image. */
    private static final double FLAT = 1.5;

    private static final int SIDE = 100;
    private static final int MOST_SHIFT = 6;

    private LayerStack() {}

    /**
     * Depth of each layer and how it falls into the stack.
     *
     * @param layers in any order
     * @param total layers in the stack
     * @param channel in which the dye is darkest; see {@link DepthOfShade#darkestChannel}
     * @return refused where no outer layer was measured, an outer layer is undyed, or a panel is black in that channel
     * @throws IllegalArgumentException if a layer's number is above {@code total} or given twice
     */
    public static MeasurementResult<LayerDepths> depths(List<Layer> layers, int total, Channel channel) {
        checked(layers, total);
        List<Depth> bare = new ArrayList<>();
        for (Layer layer : sorted(layers)) {
            double light = light(layer.picture(), channel);
            if (Double.isNaN(light) || light <= 0) {
                return MeasurementResult.refused(
                        Message.of("layers.no-light", "layer", layer.number(), "channel", channel));
            }
            int steps = Math.min(layer.number() - 1, total - layer.number());
            bare.add(new Depth(layer.number(), steps, DepthOfShade.ks(light), Double.NaN));
        }
        double outer = bare.stream()
                .filter(depth -> depth.steps() == 0)
                .mapToDouble(Depth::ks)
                .average()
                .orElse(0);
        if (outer == 0) {
            return MeasurementResult.refused(Message.of("layers.no-outer", "total", total));
        }
        List<Depth> depths = bare.stream()
                .map(depth -> new Depth(depth.number(), depth.steps(), depth.ks(), depth.ks() / outer))
                .toList();
        return MeasurementResult.found(new LayerDepths(outer, depths, decay(depths)));
    }

    private static MeasurementResult<Decay> decay(List<Depth> depths) {
        Set<Integer> steps = depths.stream().map(Depth::steps).collect(Collectors.toCollection(TreeSet::new));
        if (steps.size() < LEAST_STEPS) {
            return MeasurementResult.refused(Message.of("layers.too-few", "least", LEAST_STEPS, "found", steps.size()));
        }
        SimpleRegression line = new SimpleRegression();
        for (Depth depth : depths) {
            if (depth.ks() == 0) {
                return MeasurementResult.refused(Message.of("layers.undyed", "layer", depth.number()));
            }
            line.addData(depth.steps(), Math.log(depth.ks()));
        }
        double half = line.getSlopeConfidenceInterval(OUTSIDE);
        double rate = -line.getSlope();
        return MeasurementResult.found(new Decay(rate, new Interval(rate - half, rate + half)));
    }

    /** Mean linear light of one channel over the opaque pixels; NaN where there are none. */
    private static double light(ComparedPicture picture, Channel channel) {
        int shift = 16 - 8 * channel.ordinal();
        double sum = 0;
        int n = 0;
        for (int p : picture.argb()) {
            if (p >>> 24 >= 128) {
                sum += SrgbCurve.linear(p >> shift & 0xff);
                n++;
            }
        }
        return Math.min(1, sum / n);
    }

    /**
     * Similarity of every two given layers that touched, in order. A layer may be shifted by up to 6 % to fit, since panels are
     * not marked exactly; this raises the correlation of unlike images a little.
     *
     * @return for each pair; refused where a layer has no image
     * @throws IllegalArgumentException if a number is given twice
     */
    public static List<MeasurementResult<LayerSymmetry>> symmetries(List<Layer> layers) {
        checked(layers, Integer.MAX_VALUE);
        List<Layer> sorted = sorted(layers);
        List<MeasurementResult<LayerSymmetry>> found = new ArrayList<>();
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).number() == sorted.get(i - 1).number() + 1) {
                found.add(symmetry(sorted.get(i - 1), sorted.get(i)));
            }
        }
        return found;
    }

    private static MeasurementResult<LayerSymmetry> symmetry(Layer layer, Layer next) {
        Plane one = layer.asItLay();
        Plane other = next.asItLay();
        if (one.spread() < FLAT || other.spread() < FLAT) {
            int flat = one.spread() < FLAT ? layer.number() : next.number();
            return MeasurementResult.refused(
                    Message.of("layers.too-even", "layer", flat, "one", layer.number(), "other", next.number()));
        }
        Plane small1 = one.stretched(SIDE, SIDE);
        Plane small2 = other.stretched(SIDE, SIDE);
        double best = -1;
        for (int down = -MOST_SHIFT; down <= MOST_SHIFT; down++) {
            for (int across = -MOST_SHIFT; across <= MOST_SHIFT; across++) {
                best = Math.max(
                        best,
                        Likeness.of(small1, small2, new Moved(across, down)).correlation());
            }
        }
        return MeasurementResult.found(new LayerSymmetry(layer.number(), next.number(), best));
    }

    private record Moved(int across, int down) implements Likeness.Place {
        @Override
        public double x(double x, double y) {
            return x + across;
        }

        @Override
        public double y(double x, double y) {
            return y + down;
        }
    }

    private static List<Layer> sorted(List<Layer> layers) {
        return layers.stream().sorted(Comparator.comparingInt(Layer::number)).toList();
    }

    private static void checked(List<Layer> layers, int total) {
        Set<Integer> seen = new HashSet<>();
        for (Layer layer : layers) {
            if (layer.number() > total || !seen.add(layer.number())) {
                throw layer.number() > total
                        ? Refusal.of("layers.beyond", "total", total, "layer", layer.number())
                        : Refusal.of("layers.twice", "total", total, "layer", layer.number());
            }
        }
    }
}
