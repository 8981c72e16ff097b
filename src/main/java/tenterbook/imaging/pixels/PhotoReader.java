package tenterbook.imaging.pixels;

import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.words.Message;

/**
 * Decodes a photograph to upright sRGB pixels of at most a given long edge.
 *
 * <p>The size in the file's heading is looked at before anything is decoded: a picture of more than 250 million pixels (64
 * million for WebP, whose decoder cannot thin) is not decoded. Ordinary JPEG files are reduced while they are decoded. Of
 * others above 25 million pixels every second, third, ... one is read, so a photograph takes at most about 100 MB whatever
 * its size. Safe for use from many threads.
 */
public final class PhotoReader {
    static final long MOST_PIXELS = 250_000_000;
    static final long MOST_WEBP_PIXELS = 64_000_000;
    private static final long READ_PIXELS = 25_000_000;

    /**
     * What came of decoding.
     *
     * @param sizes upright sRGB pixels, the largest first; empty if the photograph cannot be shown
     * @param width upright width of the whole original; null if unknown
     * @param height upright height of the whole original; null if unknown
     * @param notes what a person should know, each in a sentence
     * @param measured the largest size with the file's own numbers, for measuring; empty where there is no size
     */
    public record Reading(
            List<RgbPicture> sizes, Integer width, Integer height, List<String> notes, Optional<Pixels> measured) {}

    /** @param measured as {@link Reading#measured} */
    private record Sizes(List<RgbPicture> all, Pixels measured) {}

    /**
     * Reads the pixels once, or says why not; a picture that cannot be decoded is no error.
     *
     * @param longEdges the longest side of each size wanted, the largest first; none is ever enlarged
     * @throws IOException if the file itself cannot be read
     */
    public Reading read(Path file, MediaType type, PhotoFacts facts, int... longEdges) throws IOException {
        if (!type.decodable()) {
            return unseen(facts, Message.of("photo.not-shown", "type", type.name()));
        }
        Optional<JpegStream.Reduced> streamed =
                type == MediaType.JPEG ? JpegStream.read(file, longEdges[0], MOST_PIXELS) : Optional.empty();
        if (streamed.isPresent()) {
            JpegStream.Reduced jpeg = streamed.get();
            Sizes sizes = sizes(jpeg.picture(), jpeg.profile(), facts, longEdges, jpeg.notes());
            return new Reading(
                    sizes.all(),
                    upright(facts, jpeg.width(), jpeg.height()),
                    upright(facts, jpeg.height(), jpeg.width()),
                    jpeg.notes(),
                    Optional.of(sizes.measured()));
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            if (in == null) {
                throw new IOException(Message.of("photo.cannot-open", "file", file.getFileName())
                        .inEnglish());
            }
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return unseen(facts, Message.of("photo.no-decoder", "type", type.name()));
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, type != MediaType.PNG);
                return decode(reader, type, facts, longEdges);
            } catch (IOException | RuntimeException e) {
                return unseen(facts, undecoded(e));
            } finally {
                reader.dispose();
            }
        }
    }

    /** What a decoder says of its trouble; many say nothing. */
    private static Message undecoded(Exception e) {
        return e.getMessage() == null || e.getMessage().isBlank()
                ? Message.of("photo.not-decoded")
                : Message.of("photo.not-decoded-why", "why", e.getMessage().strip());
    }

    private static Reading decode(ImageReader reader, MediaType type, PhotoFacts facts, int[] longEdges)
            throws IOException {
        long width = reader.getWidth(0);
        long height = reader.getHeight(0);
        long most = type == MediaType.WEBP ? MOST_WEBP_PIXELS : MOST_PIXELS;
        if (width * height > most) {
            return new Reading(
                    List.of(),
                    upright(facts, width, height),
                    upright(facts, height, width),
                    List.of(Message.of(
                                    "photo.too-many-pixels",
                                    "width",
                                    grouped(width),
                                    "height",
                                    grouped(height),
                                    "most",
                                    grouped(most / 1_000_000))
                            .inEnglish()),
                    Optional.empty());
        }
        List<String> notes = new ArrayList<>();
        reader.addIIOReadWarningListener((source, warning) -> note(notes, warning));
        ImageReadParam thin = reader.getDefaultReadParam();
        int step = 1;
        while ((width / step) * (height / step) > READ_PIXELS) {
            step++;
        }
        thin.setSourceSubsampling(step, step, 0, 0);
        ColourProfiles.ownColours(reader).ifPresent(thin::setDestinationType);
        BufferedImage image = reader.read(0, thin);
        Optional<ICC_Profile> profile = ColourProfiles.of(image);
        if (profile.isEmpty() && type == MediaType.PNG) {
            profile = EmbeddedProfile.ofPng(reader, notes);
        }
        PixelRows rows = RasterRows.of(image);
        RgbPicture picture = Reduction.within(rows, longEdges[0]).orElseGet(() -> RgbPicture.of(rows));
        Sizes sizes = sizes(picture, profile, facts, longEdges, notes);
        return new Reading(
                sizes.all(),
                upright(facts, width, height),
                upright(facts, height, width),
                notes,
                Optional.of(sizes.measured()));
    }

    /** Upright sRGB, and the smaller sizes from the larger. */
    private static Sizes sizes(
            RgbPicture stored, Optional<ICC_Profile> profile, PhotoFacts facts, int[] longEdges, List<String> notes) {
        RgbPicture srgb =
                profile.map(from -> ColourProfiles.toSrgb(stored, from, notes)).orElse(stored);
        RgbPicture picture = srgb.upright(facts.orientation()).within(longEdges[0]);
        Pixels measured = picture.pixels();
        if (srgb != stored) {
            RgbPicture own = stored.upright(facts.orientation()).within(longEdges[0]);
            int[] shown = picture.argb();
            measured = profile.flatMap(MatrixProfile::of)
                    .map(space -> new Pixels(shown, own.width(), own.height(), own.argb(), space))
                    .orElse(measured);
        }
        List<RgbPicture> sizes = new ArrayList<>();
        for (int longEdge : longEdges) {
            picture = picture.within(longEdge);
            sizes.add(picture);
        }
        return new Sizes(sizes, measured);
    }

    private static Integer upright(PhotoFacts facts, long side, long other) {
        return (int) (facts.sideways() ? other : side);
    }

    private static Reading unseen(PhotoFacts facts, Message note) {
        boolean known = facts.width() != null && facts.height() != null;
        return new Reading(
                List.of(),
                known ? upright(facts, facts.width(), facts.height()) : null,
                known ? upright(facts, facts.height(), facts.width()) : null,
                List.of(note.inEnglish()),
                Optional.empty());
    }

    private static String grouped(long number) {
        return String.format(Locale.ROOT, "%,d", number);
    }

    static void note(List<String> notes, String warning) {
        String sentence = Message.of("photo.while-decoding", "warning", warning).inEnglish();
        if (!notes.contains(sentence)) {
            notes.add(sentence);
        }
    }
}
