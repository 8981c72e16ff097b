package tenterbook.sample;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.sample.Arrangement.Shape;
import tenterbook.sample.SampleColour.Lab;
import tenterbook.sample.Scene.Backdrop;

/** Rendered photographs of cloth whose true outline is known, for finding the cloth in a picture; none is in the sample archive. */
public final class OutlineScene {
    private static final int LONG = 960;

    private OutlineScene() {}

    /** What lies how before what. */
    public enum Kind {
        HUNG(Backdrop.WALL, true),
        HUNG_WITH_PEGS_AND_CARD(Backdrop.WALL, true),
        LAID_ON_LINEN(Backdrop.LINEN, true),
        LAID_ON_BOARDS_WITH_CARD(Backdrop.PINE, true),
        LAID_ON_STONE(Backdrop.STONE, true),
        ON_GRASS(Backdrop.GRASS, true),
        ON_DARK_FLOOR(Backdrop.DARK_FLOOR, true),
        FOLDED(Backdrop.LINEN, true),
        WORN(Backdrop.WALL, true),
        HELD_BY_A_HAND(Backdrop.PINE, true),
        BESIDE_OTHER_THINGS(Backdrop.STONE, true),
        ON_A_PATTERNED_CARPET(Backdrop.CARPET, true),
        WALL_OF_ITS_COLOUR(Backdrop.WALL, true),
        TOUCHES_THE_FRAME(Backdrop.PINE, false),
        FILLS_THE_FRAME(Backdrop.LINEN, false);

        private final Backdrop backdrop;
        private final boolean wholeEdge;

        Kind(Backdrop backdrop, boolean wholeEdge) {
            this.backdrop = backdrop;
            this.wholeEdge = wholeEdge;
        }

        /** Whether the whole edge of the cloth is in the picture. */
        public boolean wholeEdge() {
            return wholeEdge;
        }

        private Arrangement arrangement(SampleScenes.Cloth cloth, Random random) {
            double zoom = 0.75 + 0.25 * random.nextDouble();
            Lab ground = cloth.ground();
            return switch (this) {
                case HUNG_WITH_PEGS_AND_CARD ->
                    new Arrangement(Shape.WHOLE, zoom, 0, 0, true, true, false, false, null);
                case LAID_ON_BOARDS_WITH_CARD ->
                    new Arrangement(Shape.WHOLE, zoom, 0, 0, false, true, false, false, null);
                case FOLDED -> new Arrangement(Shape.FOLDED, zoom, 0, 0, false, false, false, false, null);
                case WORN -> new Arrangement(Shape.WORN, zoom, 0, 0, false, false, false, false, null);
                case BESIDE_OTHER_THINGS ->
                    new Arrangement(Shape.WHOLE, 0.85 * zoom, 0, 0, false, false, false, true, null);
                case HELD_BY_A_HAND -> new Arrangement(Shape.WHOLE, zoom, 0, 0, false, false, true, false, null);
                case WALL_OF_ITS_COLOUR -> new Arrangement(Shape.WHOLE, zoom, 0, 0, false, false, false, false, ground);
                case TOUCHES_THE_FRAME ->
                    new Arrangement(
                            Shape.WHOLE, 1.15, 0.2 + 0.1 * random.nextDouble(), 0, false, false, false, false, null);
                case FILLS_THE_FRAME ->
                    new Arrangement(Shape.WHOLE, 2 + random.nextDouble(), 0, 0, false, false, false, false, null);
                default -> new Arrangement(Shape.WHOLE, zoom, 0, 0, false, false, false, false, null);
            };
        }
    }

    /** @param cloth whether each pixel of the image shows cloth, row by row */
    public record Drawn(Kind kind, long seed, BufferedImage image, boolean[] cloth) {
        public Pixels pixels() {
            int width = image.getWidth();
            int height = image.getHeight();
            return new Pixels(image.getRGB(0, 0, width, height, null, 0, width), width, height);
        }

        /** Pixels in both the outline and the cloth, of those in either (intersection over union). */
        public double overlap(Region outline) {
            int both = 0;
            int either = 0;
            int width = image.getWidth();
            for (int i = 0; i < cloth.length; i++) {
                boolean in = outline.contains((i % width + 0.5) / width, (i / width + 0.5) / image.getHeight());
                both += in && cloth[i] ? 1 : 0;
                either += in || cloth[i] ? 1 : 0;
            }
            return (double) both / either;
        }
    }

    /** The same kind and seed always give the same picture. */
    public static Drawn draw(Kind kind, long seed) {
        return draw(kind, seed, LONG);
    }

    /** @param longEdge of the picture, pixels; a multiple of 4 */
    public static Drawn draw(Kind kind, long seed, int longEdge) {
        Random random = new Random(seed * 31 + kind.ordinal());
        List<SampleScenes.Cloth> cloths = new ArrayList<>(SampleScenes.cloths().values());
        SampleScenes.Cloth cloth = cloths.get(random.nextInt(cloths.size()));
        boolean upright = cloth.down() >= cloth.across();
        double warm = 0.06 * random.nextGaussian();
        Scene scene = new Scene(
                cloth.boardState(),
                cloth.across(),
                cloth.down(),
                cloth.kind(),
                cloth.ground(),
                cloth.undyed(),
                cloth.local(),
                cloth.faults(),
                cloth.seed(),
                Scene.View.FRONT,
                1,
                kind.backdrop,
                new Scene.Cast(1 + warm, 1, 1 - warm),
                upright ? longEdge / 4 * 3 : longEdge,
                upright ? longEdge : longEdge / 4 * 3,
                "",
                seed);
        ClothPhotograph.Taken taken = ClothPhotograph.take(scene, kind.arrangement(cloth, random));
        return new Drawn(kind, seed, taken.image(), taken.photograph().seen());
    }
}
