package tenterbook.sample;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Renders all photographs of the sample studio into a folder, as a telephone would have stored them. */
public final class SamplePhotographs {
    private static final int[] ISO = {50, 64, 80, 100, 125, 160};
    private static final int[] EXPOSURE = {250, 200, 160, 125, 100, 80};

    private SamplePhotographs() {}

    /** Told after each photograph. */
    @FunctionalInterface
    public interface Progress {
        /**
         * @param done photographs written so far, from 1
         * @param total photographs in all
         * @param file name of the one just written
         */
        void wrote(int done, int total, String file);
    }

    /** A place in the upright picture, pixels from its upper left. */
    public record Pixel(double x, double y) {}

    /**
     * What is known of one written photograph.
     *
     * @param file name in the folder, such as {@code V24-001-front.jpg}
     * @param subject piece number, a piece number with {@code -redyed}, or a board state such as {@code B02-II}
     * @param view front, detail, back, layer, label or board
     * @param layer layer shown, from 1 at the upper board; 0 where the view shows no single layer
     * @param redGain colour cast: gain on linear light put on the whole picture; green and blue alike
     * @param greyCard corners of the 18 per cent card in the upright picture, from its upper left clockwise
     */
    public record Written(
            String file,
            String subject,
            String view,
            int layer,
            OffsetDateTime taken,
            int orientation,
            boolean hasPosition,
            double redGain,
            double greenGain,
            double blueGain,
            List<Pixel> greyCard) {}

    /** How many photographs {@link #writeTo} writes. */
    public static int count() {
        return SampleScenes.shots().size();
    }

    /**
     * Writes every photograph; files of the same names are replaced, and nothing else in the folder is touched.
     *
     * @param folder made if absent
     * @throws IOException if the folder cannot be made or written
     */
    public static List<Written> writeTo(Path folder, Progress progress) throws IOException {
        Files.createDirectories(folder);
        Map<String, SampleScenes.Cloth> cloths = SampleScenes.cloths();
        List<SampleScenes.Shot> shots = SampleScenes.shots();
        List<Written> written = new ArrayList<>();
        for (SampleScenes.Shot shot : shots) {
            Developed developed = develop(cloths, shot);
            Files.write(folder.resolve(shot.file()), jpeg(developed.image(), shot));
            written.add(note(shot, developed.greyCard()));
            progress.wrote(written.size(), shots.size(), shot.file());
        }
        return written;
    }

    record Developed(BufferedImage image, List<double[]> greyCard) {}

    static Developed develop(Map<String, SampleScenes.Cloth> cloths, SampleScenes.Shot shot) {
        if (shot.ofBoard()) {
            return BoardPhotograph.take(
                    shot.subject(),
                    BoardPhotograph.Wood.valueOf(shot.view()),
                    shot.width(),
                    shot.height(),
                    shot.cast(),
                    shot.ticket(),
                    shot.seed());
        }
        ClothPhotograph.Taken taken = ClothPhotograph.take(SampleScenes.scene(cloths.get(shot.subject()), shot));
        return new Developed(taken.image(), taken.notes().greyCard());
    }

    static byte[] jpeg(BufferedImage upright, SampleScenes.Shot shot) throws IOException {
        boolean swap = shot.orientation() == 6 || shot.orientation() == 8;
        int light = Math.floorMod(shot.file().hashCode(), ISO.length);
        return JpegFile.bytes(
                upright,
                new ExifSegment.Shot(
                        shot.taken(),
                        shot.orientation(),
                        swap ? shot.height() : shot.width(),
                        swap ? shot.width() : shot.height(),
                        ISO[light],
                        EXPOSURE[light],
                        shot.position()),
                shot.profile());
    }

    private static Written note(SampleScenes.Shot shot, List<double[]> card) {
        boolean one = shot.view().equals("LAYER") || shot.view().equals("DETAIL");
        return new Written(
                shot.file(),
                shot.subject(),
                shot.ofBoard() ? "board" : shot.view().toLowerCase(java.util.Locale.ROOT),
                one ? shot.layer() : 0,
                shot.taken(),
                shot.orientation(),
                shot.position() != null,
                shot.cast().red(),
                shot.cast().green(),
                shot.cast().blue(),
                card.stream().map(p -> new Pixel(p[0], p[1])).toList());
    }
}
