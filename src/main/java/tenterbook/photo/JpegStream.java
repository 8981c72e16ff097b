package tenterbook.photo;

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

    /** The reduced picture, not yet turned upright, and what a person should know. */
    record Reduced(Picture picture, int width, int height, List<String> notes) {}

    /** Empty if this is no file for the quick way; then nothing is known of it yet. */
    static Optional<Reduced> read(Path file, int longEdge, long mostPixels) throws IOException {
        if (Files.size(file) > LONGEST) {
            return Optional.empty();
        }
        byte[] jpeg = Files.readAllBytes(file);
        Optional<JpegHead> head = JpegHead.of(jpeg);
        if (head.isEmpty() || !head.get().plain()) {
            return Optional.empty();
        }
        int width = head.get().width();
        int height = head.get().height();
        Optional<Reduction.Size> size = Reduction.Size.within(width, height, longEdge);
        if (size.isEmpty()
                || (long) width * height > mostPixels
                || (long) width > (long) OpaqueReduction.MOST * size.get().width()) {
            return Optional.empty();
        }
        OpaqueReduction reduction = new OpaqueReduction(
                width, height, size.get().width(), size.get().height());
        List<String> notes = new ArrayList<>();
        try {
            if (!decode(jpeg, head.get(), reduction, notes)) {
                return Optional.empty();
            }
        } catch (IOException | RuntimeException e) {
            // Whatever is wrong with it, the ordinary way finds again and tells.
            return Optional.empty();
        }
        Picture picture = reduction.picture();
        Optional<ICC_Profile> profile = head.get().profile().flatMap(bytes -> ColourProfiles.parse(bytes, notes));
        if (profile.isPresent()) {
            picture = ColourProfiles.toSrgb(picture, profile.get(), notes);
        }
        return Optional.of(new Reduced(picture, width, height, notes));
    }

    private static boolean decode(byte[] jpeg, JpegHead head, OpaqueReduction reduction, List<String> notes)
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
                PassingRows rows = PassingRows.of(head.width(), head.height(), reduction::add);
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
