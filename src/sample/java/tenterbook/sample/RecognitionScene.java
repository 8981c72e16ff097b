package tenterbook.sample;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tenterbook.sample.Arrangement.Shape;
import tenterbook.sample.Scene.Backdrop;
import tenterbook.sample.Scene.View;

/**
 * Rendered photographs of dyed cloths for telling which piece a photograph shows; none is in the sample archive. A twin is
 * made on the same boards by the same recipe, and what the dyeing left to chance is its own.
 *
 * @param piece the sample's name of the cloth, with a number behind it for a twin
 * @param file a name that is the same for the same picture
 */
public record RecognitionScene(String piece, String board, boolean close, String file, Scene scene, Arrangement lay) {
    private static final int LONG = 1200;
    private static final int SHORT = 900;

    public BufferedImage take() {
        return ClothPhotograph.take(scene, lay).image();
    }

    /** The same taken with fewer pixels, which is faster. */
    public RecognitionScene small() {
        Scene less = new Scene(
                scene.boardState(),
                scene.across(),
                scene.down(),
                scene.cloth(),
                scene.ground(),
                scene.undyed(),
                scene.local(),
                scene.faults(),
                scene.clothSeed(),
                scene.view(),
                scene.layer(),
                scene.backdrop(),
                scene.cast(),
                scene.width() / 2,
                scene.height() / 2,
                scene.ticket(),
                scene.photoSeed());
        return new RecognitionScene(piece, board, close, "small-" + file, less, lay);
    }

    /** Another photograph of one of the sample's cloths. */
    public static RecognitionScene other(String cloth, boolean close, long seed) {
        return of(SampleScenes.cloths().get(cloth), 0, close ? View.DETAIL : View.FRONT, seed);
    }

    /** Each photograph of a cloth in the sample archive, as it stands there. */
    public static List<RecognitionScene> archived() {
        var cloths = SampleScenes.cloths();
        List<RecognitionScene> scenes = new ArrayList<>();
        for (SampleScenes.Shot shot : SampleScenes.shots()) {
            if (!shot.ofBoard() && !shot.view().equals("LABEL")) {
                SampleScenes.Cloth cloth = cloths.get(shot.subject());
                Scene scene = SampleScenes.scene(cloth, shot);
                scenes.add(new RecognitionScene(
                        piece(cloth),
                        cloth.boardState(),
                        scene.view() == View.DETAIL || scene.view() == View.LAYER,
                        shot.file(),
                        scene,
                        Arrangement.PLAIN));
            }
        }
        return scenes;
    }

    /** Another photograph of each of the sample's cloths, whole and close. */
    public static List<RecognitionScene> others(long seed) {
        List<RecognitionScene> scenes = new ArrayList<>();
        for (SampleScenes.Cloth cloth : SampleScenes.cloths().values()) {
            scenes.add(of(cloth, 0, View.FRONT, seed));
            scenes.add(of(cloth, 0, View.DETAIL, seed));
        }
        return scenes;
    }

    /** A photograph of each of so many twins of a cloth. */
    public static List<RecognitionScene> twins(String cloth, int count, boolean close, long seed) {
        List<RecognitionScene> scenes = new ArrayList<>();
        for (int twin = 1; twin <= count; twin++) {
            scenes.add(of(SampleScenes.cloths().get(cloth), twin, close ? View.DETAIL : View.FRONT, seed));
        }
        return scenes;
    }

    /** A piece that was dyed again is the same piece. */
    private static String piece(SampleScenes.Cloth cloth) {
        return cloth.subject().substring(0, 7);
    }

    private static RecognitionScene of(SampleScenes.Cloth cloth, int twin, View view, long seed) {
        String file = cloth.subject() + (twin == 0 ? "" : "~" + twin) + "-" + view + "-" + seed;
        Random random = new Random(file.hashCode() * 131L + seed);
        boolean upright = view == View.FRONT ? cloth.down() >= cloth.across() : random.nextBoolean();
        Backdrop[] grounds = {Backdrop.WALL, Backdrop.LINEN, Backdrop.PINE, Backdrop.STONE, Backdrop.GRASS};
        double warm = 0.05 * random.nextGaussian();
        int layer = 1 + random.nextInt(cloth.across() * cloth.down());
        Scene scene = new Scene(
                cloth.boardState(),
                cloth.across(),
                cloth.down(),
                cloth.kind(),
                cloth.ground(),
                cloth.undyed(),
                cloth.local(),
                cloth.faults(),
                cloth.seed() + 7_919L * twin,
                view,
                layer,
                grounds[random.nextInt(grounds.length)],
                new Scene.Cast(1 + warm, 1, 1 - warm),
                upright ? SHORT : LONG,
                upright ? LONG : SHORT,
                "",
                random.nextInt(1 << 30));
        boolean card = random.nextInt(3) == 0;
        Arrangement lay = new Arrangement(
                Shape.WHOLE,
                view == View.FRONT ? 0.7 + 0.3 * random.nextDouble() : 1,
                0,
                0,
                card,
                card,
                false,
                false,
                null);
        return new RecognitionScene(
                piece(cloth) + (twin == 0 ? "" : "-twin-" + twin),
                cloth.boardState(),
                view != View.FRONT,
                file,
                scene,
                lay);
    }
}
