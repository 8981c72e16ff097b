package tenterbook.imaging.pixels;

import com.twelvemonkeys.imageio.stream.ByteArrayImageInputStream;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * Decodes an ordinary JPEG file and reduces it row by row as it is decoded, so that it takes the file's own length and a few
 * rows of memory however many pixels it has.
 *
 * <p>The decoder is given the file without metadata and profile. It so has no colours to convert in the large picture, and
 * nothing in them can disturb it; the profile is applied to the reduced one.
 */
final class JpegStream {
    private static final long LONGEST = 64L << 20;

    private JpegStream() {}

    /**
     * @param picture as stored, in the file's own colours
     * @param width of the whole picture, as stored
     * @param notes what a person should know
     */
    record Reduced(RgbPicture picture, Optional<ICC_Profile> profile, int width, int height, List<String> notes) {}

    /**
     * Empty if this is no file for the quick way; then nothing is known of it yet.
     *
     * @param longEdge the longest side wanted
     */
    static Optional<Reduced> read(Path file, int longEdge, long mostPixels) throws IOException {
        if (Files.size(file) > LONGEST) {
            return Optional.empty();
        }
        byte[] jpeg = Files.readAllBytes(file);
        Optional<JpegHead> head = JpegHead.of(jpeg);
        if (head.isEmpty() || !head.get().plain()) {
            return Optional.empty();
        }
        PixelSize whole = new PixelSize(head.get().width(), head.get().height());
        if (whole.within(longEdge).equals(whole) || (long) whole.width() * whole.height() > mostPixels) {
            return Optional.empty();
        }
        Reduction reduction = new Reduction(whole, whole.within(longEdge), 3);
        List<String> notes = new ArrayList<>();
        try {
            if (!decode(jpeg, head.get(), reduction, notes)) {
                return Optional.empty();
            }
        } catch (IOException | RuntimeException e) {
            // Whatever is wrong with it, the ordinary way finds again and tells.
            return Optional.empty();
        }
        Optional<ICC_Profile> profile =
                Optional.ofNullable(head.get().profile()).flatMap(bytes -> ColourProfiles.parse(bytes, notes));
        return Optional.of(new Reduced(reduction.picture(), profile, whole.width(), whole.height(), notes));
    }

    private static boolean decode(byte[] jpeg, JpegHead head, Reduction reduction, List<String> notes)
            throws IOException {
        int from = Jpeg.dropMetadata(jpeg, head.scanAt());
        try (ImageInputStream in = new ByteArrayImageInputStream(jpeg, from, jpeg.length - from)) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return false;
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                if (reader.getWidth(0) != head.width() || reader.getHeight(0) != head.height()) {
                    return false;
                }
                reader.addIIOReadWarningListener((source, warning) -> PhotoReader.note(notes, warning));
                DecoderRowSink rows = DecoderRowSink.of(head.width(), head.height(), reduction::add);
                ImageReadParam param = reader.getDefaultReadParam();
                param.setDestination(rows.image());
                reader.read(0, param);
                return rows.complete();
            } finally {
                reader.dispose();
            }
        }
    }
}
