package tenterbook.sample;

import java.util.Random;
import java.util.stream.IntStream;
import tenterbook.sample.SampleColour.Lab;

/** Photographs the carved face of one board state on the bench, lit from the upper left. */
final class BoardPhotograph {
    private static final double RIM_MM = 16;
    private static final double FINE = 4;

    /** What the maker's woods look like when they have been in the dye for some years. */
    enum Wood {
        PEAR(new Lab(58, 15, 25), 0.5, 0.06),
        SYCAMORE(new Lab(75, 5, 22), 0.8, 0.05),
        WILD_CHERRY(new Lab(52, 17, 27), 0.9, 0.09),
        LIME(new Lab(72, 6, 24), 0.4, 0.035),
        WALNUT(new Lab(34, 8, 14), 1.2, 0.13),
        HORNBEAM(new Lab(70, 4, 18), 0.6, 0.06);

        final Lab colour;
        final double ringsPerCm;
        final double grain;

        Wood(Lab colour, double ringsPerCm, double grain) {
            this.colour = colour;
            this.ringsPerCm = ringsPerCm;
            this.grain = grain;
        }
    }

    private final Motif motif;
    private final BoardFields fields;
    private final Wood wood;
    private final Noise noise;
    private final double[] base;
    private final double[] dye;
    private final BackdropPaint bench;
    private final Picture picture;
    /** Carved heights over the whole board with its rim, FINE samples to the mm. */
    private final Field relief;

    private final double scale;
    private final double turn;

    private BoardPhotograph(String boardState, Wood wood, int width, int height, long seed) {
        this.fields = BoardFields.of(boardState);
        this.motif = fields.motif;
        this.wood = wood;
        this.noise = new Noise(boardState.substring(0, 3).hashCode());
        this.base = SampleColour.linear(wood.colour);
        this.dye = SampleColour.linear(new Lab(26, -1, -12));
        this.picture = new Picture(width, height);
        this.relief = new Field(
                (int) ((motif.widthMm() + 2 * RIM_MM) * FINE), (int) ((motif.heightMm() + 2 * RIM_MM) * FINE));
        carve();
        this.scale = 0.84 * Math.min(width / (motif.widthMm() + 2 * RIM_MM), height / (motif.heightMm() + 2 * RIM_MM));
        this.turn = Math.toRadians(new Random(seed).nextGaussian() * 1.1);
        this.bench = new BackdropPaint(
                wood == Wood.WALNUT || wood == Wood.PEAR ? Scene.Backdrop.LINEN : Scene.Backdrop.STONE, seed, scale);
    }

    static SamplePhotographs.Developed take(
            String boardState, Wood wood, int width, int height, Scene.Cast cast, String ticket, long seed) {
        BoardPhotograph p = new BoardPhotograph(boardState, wood, width, height, seed);
        p.picture.rows(p::row);
        Props props = new Props(width, height);
        props.greyCard(width - 92, height - 62, 132, 4);
        if (!ticket.isEmpty()) {
            props.ticket(120, height - 48, 48, -2, ticket);
        }
        p.picture.over(props.image);
        p.picture.soften(0.6);
        return new SamplePhotographs.Developed(p.picture.developed(cast, 1.3, seed), props.greyCard);
    }

    private void row(int py) {
        double[] rgb = new double[3];
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        for (int px = 0; px < picture.width; px++) {
            double dx = (px - picture.width * 0.5) / scale;
            double dy = (py - picture.height * 0.475) / scale;
            double x = motif.widthMm() / 2 + dx * c + dy * s;
            double y = motif.heightMm() / 2 - dx * s + dy * c;
            double inside = rim(x, y);
            double cover = DyedCloth.smooth(inside * scale + 0.5);
            bench.at(dx, dy, rgb);
            double shade = 1
                    - 0.5 * DyedCloth.smooth((rim(x - 7, y - 9) + 9) / 18)
                    - 0.25 * Math.exp(-Math.max(0, -inside) / 3);
            for (int k = 0; k < 3; k++) {
                rgb[k] *= shade;
            }
            if (cover > 0) {
                face(x, y, inside, cover, rgb);
            }
            double u = (double) px / picture.width - 0.5;
            double v = (double) py / picture.height - 0.5;
            double light = (1 - 0.16 * u - 0.14 * v) * (1.03 - 0.25 * (u * u + v * v));
            picture.set(py * picture.width + px, rgb[0] * light, rgb[1] * light, rgb[2] * light);
        }
    }

    /** mm inside the board's outer edge. */
    private double rim(double x, double y) {
        double across = Math.min(x + RIM_MM, motif.widthMm() + RIM_MM - x);
        double down = Math.min(y + RIM_MM, motif.heightMm() + RIM_MM - y);
        double corner = Math.hypot(Math.min(0, across - 5), Math.min(0, down - 5));
        return Math.min(Math.min(across, down), across < 5 && down < 5 ? 5 - corner : 99)
                + 0.25 * noise.at(x / 30, y / 30);
    }

    /** Height of the carved face, mm: lands at 0, channels down to about -6, their walls sloping as a gouge leaves them. */
    private double carvedHeight(double x, double y) {
        if (x < 0 || y < 0 || x > motif.widthMm() || y > motif.heightMm()) {
            return -0.4;
        }
        double d = fields.channelDepth(x, y) + 0.18 * noise.at(x / 3, y / 3);
        double floor = -4.6 - 0.5 * noise.octaves(x / 5, y / 5, 2) - 0.35 * Math.abs(Math.sin(x * 0.9 + y * 0.5));
        double wall = d <= 0 ? -0.25 * Math.exp(d / 0.5) : floor * DyedCloth.smooth((d + 0.1) / 2.4);
        Motif.Hole h = motif.holes().get(fields.hole(x, y));
        double r = Math.hypot(h.x() - x, h.y() - y);
        return Math.min(wall, -22 * DyedCloth.smooth((h.radiusMm() + 0.4 - r) / 0.8));
    }

    private void carve() {
        IntStream.range(0, relief.height).parallel().forEach(y -> {
            for (int x = 0; x < relief.width; x++) {
                relief.values[y * relief.width + x] =
                        (float) carvedHeight((x + 0.5) / FINE - RIM_MM, (y + 0.5) / FINE - RIM_MM);
            }
        });
    }

    private double height(double x, double y) {
        return relief.sample((x + RIM_MM) * FINE, (y + RIM_MM) * FINE);
    }

    private void face(double x, double y, double inside, double cover, double[] rgb) {
        double e = 0.45;
        double h = height(x, y);
        double light = 1 + 0.17 * (height(x + e, y) - h) / e + 0.13 * (height(x, y + e) - h) / e;
        double shadow = 0;
        for (int k = 1; k <= 4; k++) {
            double rise = height(x - 0.9 * k, y - 0.8 * k) - h - 0.95 * k;
            shadow = Math.max(shadow, DyedCloth.smooth(rise / 1.5));
        }
        light = Math.max(0.35, Math.min(1.35, light)) * (1 - 0.42 * shadow) * (1 + 0.035 * Math.max(-6, h));
        if (h < -8) {
            light *= 0.32;
        }
        double bevel = Math.exp(-inside / 1.2);
        light *= 1 + (x + y < motif.widthMm() * 0.6 ? 0.18 : -0.22) * bevel;
        double grain = grain(x, y, h);
        double stained = DyedCloth.smooth((-h - 0.8) / 3) * (0.5 + 0.22 * noise.octaves(x / 22, y / 22, 3))
                + 0.1 * Math.max(0, noise.octaves(x / 50, y / 40 + 5, 3));
        for (int k = 0; k < 3; k++) {
            double body = base[k] * grain * (1 - stained) + stained * (0.55 * dye[k] + 0.25 * base[k]);
            rgb[k] = rgb[k] * (1 - cover) + cover * body * light;
        }
        if (wood == Wood.WALNUT && h > -0.3) {
            double gloss = 0.03
                    * DyedCloth.smooth(1.1 - Math.hypot(x / motif.widthMm() - 0.3, y / motif.heightMm() - 0.25) * 1.6);
            for (int k = 0; k < 3; k++) {
                rgb[k] += cover * gloss * (1 + 0.4 * noise.at(x / 40, y / 4));
            }
        }
    }

    private double grain(double x, double y, double h) {
        double across = y + 16 * noise.at(x / 260, y / 130) + 0.8 * h;
        double rings = Math.sin(across * wood.ringsPerCm * 0.63 + 3 * noise.at(x / 330, y / 40));
        double fibre = noise.octaves(x / 30, y / 0.7, 2);
        double pores = Math.max(0, noise.at(x / 5, y / 0.5) - 0.35);
        return 1
                + wood.grain * (rings + 0.8 * fibre)
                - 0.5 * wood.grain * 4 * pores
                + 0.06 * noise.octaves(x / 140, y / 70, 3);
    }
}
