package tenterbook.sample;

import java.awt.image.BufferedImage;
import java.util.Random;
import tenterbook.sample.Scene.View;

/** Takes a photograph of a dyed cloth: backdrop, shadow, cloth, things about it, light, lens, cast, sensor. */
final class ClothPhotograph {
    private static final double NOISE = 1.3;

    private final Scene scene;
    private final Arrangement arrangement;
    private final DyedCloth cloth;
    private final Lay lay;
    private final Weave weave;
    private final BackdropPaint backdrop;
    private final Noise edge;
    private final double[] undyed;
    private final double[] ground;
    private final double[][] local;
    /** In linear light before the cast, as the tests wish to see it. */
    final Picture picture;

    /** Cover of cloth, 0 to 1. */
    final float[] cover;

    /** mm into a channel at each pixel, and cloth mm; NaN off the cloth. */
    final float[] channel;

    final float[] clothX;
    final float[] clothY;
    private final Props props;

    private ClothPhotograph(Scene scene, Arrangement arrangement) {
        this.scene = scene;
        this.arrangement = arrangement;
        Motif motif = BoardFields.of(scene.boardState()).motif;
        double w = motif.widthMm() * scene.across() + 2 * DyedCloth.MARGIN_MM;
        double h = motif.heightMm() * scene.down() + 2 * DyedCloth.MARGIN_MM;
        DyedCloth rough = new DyedCloth(scene, 0);
        this.lay = new Lay(scene, arrangement, w, h, motif, rough);
        this.cloth = new DyedCloth(scene, 0.55 / lay.pixelsPerMm);
        this.weave = new Weave(scene.cloth(), scene.clothSeed(), lay.pixelsPerMm);
        this.backdrop = arrangement.wall() == null
                ? new BackdropPaint(scene.backdrop(), scene.photoSeed() / 4, lay.pixelsPerMm)
                : new BackdropPaint(scene.backdrop(), arrangement.wall(), scene.photoSeed() / 4, lay.pixelsPerMm);
        this.edge = new Noise(scene.clothSeed() + 8);
        this.undyed = absorptions(scene.undyed());
        this.ground = absorptions(scene.ground());
        this.local = scene.local().stream().map(c -> absorptions(c.colour())).toArray(double[][]::new);
        this.picture = new Picture(scene.width(), scene.height());
        int n = scene.width() * scene.height();
        this.cover = new float[n];
        this.channel = new float[n];
        this.clothX = new float[n];
        this.clothY = new float[n];
        this.props = new Props(scene.width(), scene.height());
    }

    /** @param photograph what lies where in the picture */
    record Taken(BufferedImage image, SceneNotes notes, ClothPhotograph photograph) {}

    static Taken take(Scene scene) {
        return take(scene, Arrangement.PLAIN);
    }

    static Taken take(Scene scene, Arrangement arrangement) {
        ClothPhotograph photograph = before(scene, arrangement);
        BufferedImage image = photograph.picture.developed(scene.cast(), NOISE, scene.photoSeed());
        return new Taken(
                image,
                new SceneNotes(
                        scene,
                        scene.cast(),
                        photograph.props.greyCard,
                        SampleColour.decode(118),
                        photograph.lay.pixelsPerMm),
                photograph);
    }

    /** Everything up to the cast and the sensor. */
    static ClothPhotograph before(Scene scene) {
        return before(scene, Arrangement.PLAIN);
    }

    private static ClothPhotograph before(Scene scene, Arrangement arrangement) {
        ClothPhotograph p = new ClothPhotograph(scene, arrangement);
        p.picture.rows(p::backdropRow);
        p.picture.rows(p::placeRow);
        p.shade(p.clothShadow(), p.lay.pixelsPerMm * (scene.hung() ? 22 : 5), scene.hung() ? 0.34 : 0.42, true);
        p.picture.rows(p::clothRow);
        p.arrange();
        p.shade(p.props.coverage(), 7, 0.4, false);
        p.picture.over(p.props.image);
        p.picture.rows(p::lightRow);
        p.picture.soften(0.75);
        return p;
    }

    /** Whether a peg, the grey card or a ticket hides the pixel, or the dyeing there lay outside the boards. */
    boolean hiddenOrHem(int i) {
        boolean hem = clothX[i] < 0 || clothY[i] < 0 || clothX[i] > cloth.widthMm || clothY[i] > cloth.heightMm;
        return hem || props.image.getRGB(i % picture.width, i / picture.width) >>> 24 > 0;
    }

    /** Where cloth is to be seen: half covered or more, and nothing before it. */
    boolean[] seen() {
        boolean[] seen = new boolean[cover.length];
        for (int i = 0; i < seen.length; i++) {
            seen[i] = cover[i] >= 0.5 && props.image.getRGB(i % picture.width, i / picture.width) >>> 24 < 128;
        }
        return seen;
    }

    private static double[] absorptions(SampleColour.Lab lab) {
        double[] rgb = SampleColour.linear(lab);
        for (int i = 0; i < 3; i++) {
            rgb[i] = SampleColour.absorption(rgb[i]);
        }
        return rgb;
    }

    private void backdropRow(int y) {
        double[] rgb = new double[3];
        for (int x = 0; x < picture.width; x++) {
            backdrop.at(x / lay.pixelsPerMm, y / lay.pixelsPerMm, rgb);
            double dado = scene.hung() && scene.cloth().sheer > 0.3 ? dado(y) : 1;
            picture.set(y * picture.width + x, rgb[0] * dado, rgb[1] * dado, rgb[2] * dado);
        }
    }

    /** A rail and a darker lower wall, so that there is something to see through a sheer cloth. */
    private double dado(int y) {
        double mm = (y - picture.height * 0.63) / lay.pixelsPerMm;
        double rail = Math.exp(-Math.pow(mm / 5, 2)) + Math.exp(-Math.pow((mm - 46) / 4, 2));
        return (1 - 0.16 * DyedCloth.smooth(mm / 3)) * (1 - 0.4 * rail);
    }

    private void placeRow(int y) {
        double[] mm = new double[2];
        for (int x = 0; x < picture.width; x++) {
            int i = y * picture.width + x;
            lay.cloth(x, y, lay.slopeX(x, y), lay.slopeY(x, y), mm);
            double inside = arrangement.shape() == Arrangement.Shape.WHOLE
                    ? hemDistance(mm[0], mm[1])
                    : arrangement.inside(mm, cloth.widthMm, cloth.heightMm);
            clothX[i] = (float) mm[0];
            clothY[i] = (float) mm[1];
            cover[i] = (float) Math.max(0, Math.min(1, inside * lay.pixelsPerMm + 0.5));
            channel[i] = Float.NaN;
        }
    }

    /** mm inside the cut edge, which was cut by hand. */
    private double hemDistance(double x, double y) {
        double m = DyedCloth.MARGIN_MM;
        double across = Math.min(x + m, cloth.widthMm + m - x);
        double down = Math.min(y + m, cloth.heightMm + m - y);
        if (Math.min(across, down) > 2 * m || Math.min(across, down) < -m) {
            return Math.min(across, down);
        }
        across += 1.6 * edge.at(y / 90, 3) + 0.35 * edge.at(y / 5, 8);
        down += 1.6 * edge.at(x / 90, 13) + 0.35 * edge.at(x / 5, 18);
        return Math.min(across, down);
    }

    private Field clothShadow() {
        Field quarter = new Field(picture.width / 4 + 1, picture.height / 4 + 1);
        for (int y = 0; y < quarter.height; y++) {
            for (int x = 0; x < quarter.width; x++) {
                int i = Math.min(picture.height - 1, y * 4) * picture.width + Math.min(picture.width - 1, x * 4);
                quarter.values[y * quarter.width + x] = cover[i];
            }
        }
        return quarter;
    }

    /** Darkens the picture where the light, from the upper left, is kept off; depth is the offset in pixels. */
    private void shade(Field blocker, double depth, double strength, boolean sheer) {
        double dense = sheer ? 1 - scene.cloth().sheer * 0.55 : 1;
        Field soft = blocker.blurred(Math.max(1.2, depth * 0.28));
        Field wide = blocker.blurred(Math.max(4, depth));
        picture.rows(y -> {
            for (int x = 0; x < picture.width; x++) {
                double near = soft.sample((x - depth * 0.5) / 4 + 0.5, (y - depth * 0.6) / 4 + 0.5);
                double far = wide.sample((x - depth) / 4 + 0.5, (y - depth * 1.2) / 4 + 0.5);
                picture.times(y * picture.width + x, 1 - strength * dense * (0.68 * near + 0.32 * far));
            }
        });
    }

    private void clothRow(int y) {
        DyedCloth.Take take = new DyedCloth.Take();
        double[] behind = backdrop.base();
        ClothKind kind = scene.cloth();
        for (int x = 0; x < picture.width; x++) {
            int i = y * picture.width + x;
            if (cover[i] <= 0) {
                continue;
            }
            double mx = clothX[i];
            double my = clothY[i];
            cloth.at(mx, my, take);
            channel[i] = (float) take.channel;
            if (take.localIndex >= 0 && take.local > 0.25) {
                channel[i] = Float.NaN;
            }
            double uptake = weave.uptake(mx, my);
            double light = weave.relief(mx, my) * fall(x, y, take) * hem(mx, my);
            double gloss = kind.sheen * Math.max(0, lay.slopeX(x, y) * 1.6 + lay.slopeY(x, y) * 0.8 + 0.02);
            double through = kind.sheer * (1 - 0.25 * DyedCloth.smooth(take.channel));
            double c = cover[i];
            picture.red[i] = (float) (picture.red[i] * (1 - c)
                    + c * lit(0, take, uptake, light, gloss, through * (picture.red[i] / behind[0] - 1)));
            picture.green[i] = (float) (picture.green[i] * (1 - c)
                    + c * lit(1, take, uptake, light, gloss, through * (picture.green[i] / behind[1] - 1)));
            picture.blue[i] = (float) (picture.blue[i] * (1 - c)
                    + c * lit(2, take, uptake, light, gloss, through * (picture.blue[i] / behind[2] - 1)));
        }
    }

    private double lit(int band, DyedCloth.Take take, double uptake, double light, double gloss, double behind) {
        double k = undyed[band] + take.ground * uptake * (ground[band] - undyed[band]);
        if (take.localIndex >= 0) {
            k += take.local * uptake * (local[take.localIndex][band] - undyed[band]);
        }
        return SampleColour.reflectance(Math.max(1e-4, k)) * light * (1 + behind) + gloss * 0.3;
    }

    /** Light by the fall of the cloth: slopes towards the window are lighter; pressed folds stand up a little. */
    private double fall(int x, int y, DyedCloth.Take take) {
        double strength = scene.hung() ? 0.95 : 1.25;
        double slope = lay.slopeX(x, y) * 0.85 + lay.slopeY(x, y) * 0.55;
        double fx = take.foldX / 4.5;
        double fy = take.foldY / 4.5;
        double pressed = 0.075 * fx * Math.exp(-fx * fx) + 0.06 * fy * Math.exp(-fy * fy);
        return Math.max(0.45, 1 + strength * slope - pressed);
    }

    private double hem(double x, double y) {
        double d = hemDistance(x, y);
        if (d > 12) {
            return 1;
        }
        return 1
                - 0.2 * Math.exp(-Math.pow((d - 5.4) / 0.8, 2))
                + 0.07 * Math.exp(-Math.pow((d - 3) / 1.6, 2))
                - 0.12 * Math.exp(-d / 0.7);
    }

    private void lightRow(int y) {
        double v = (double) y / picture.height - 0.5;
        for (int x = 0; x < picture.width; x++) {
            double u = (double) x / picture.width - 0.5;
            double window = 1 - 0.11 * u - 0.08 * v;
            double corner = 1.035 - 0.22 * (u * u + v * v);
            picture.times(y * picture.width + x, window * corner);
        }
    }

    private void arrange() {
        Random random = new Random(scene.photoSeed() * 13 + 1);
        double s = lay.pixelsPerMm;
        double w = picture.width;
        double h = picture.height;
        for (double at : arrangement.pegged() ? lay.pegs : new double[0]) {
            double[] p = lay.picture(
                    at * (cloth.widthMm + 2 * DyedCloth.MARGIN_MM) - DyedCloth.MARGIN_MM, -DyedCloth.MARGIN_MM);
            if (at == lay.pegs[0]) {
                props.cord(p[1] - 6 * s, w, 8 * s, Math.max(2.5, 3.2 * s));
            }
            props.peg(p[0], p[1] + 4 * s, s, random);
        }
        boolean whole = scene.view() == View.FRONT || scene.view() == View.BACK;
        arrangement.people(props, lay, cloth.widthMm, cloth.heightMm);
        if (!arrangement.card()) {
            return;
        }
        double card = whole ? Math.max(104, Math.min(150, 85 * s)) : 168;
        boolean left = random.nextInt(3) == 0;
        double cx = left ? card * 0.72 : w - card * 0.72;
        double cy = h - card * 0.5;
        props.greyCard(cx, cy, card, random.nextGaussian() * 4 + (left ? -5 : 5));
        if (scene.view() == View.LABEL) {
            props.sewnLabel(
                    w * 0.44,
                    h * 0.42,
                    h * 0.25,
                    random.nextGaussian() * 1.6,
                    scene.ticket(),
                    "Oficina Valderim",
                    "Porto Sarelho");
        } else if (!scene.ticket().isEmpty()) {
            props.ticket(left ? w - 150 : 150, h - 62, whole ? 46 : 58, random.nextGaussian() * 3, scene.ticket());
        }
    }
}
