package tenterbook.imaging.pixels;

import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.decoder.InstalledDecoder;
import tenterbook.imaging.decoder.InstalledDecoders;
import tenterbook.imaging.file.HeifHead;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.words.Message;

/**
 * Decodes a photograph to upright sRGB pixels of at most a given long edge.
 *
 * <p>The size in the file's heading is looked at before anything is decoded: a picture of more than 250 million pixels (64
 * million for WebP, whose decoder cannot thin, and for HEIC and AVIF, which a decoder installed on the computer reads within
 * bounds) is not decoded. Ordinary JPEG files are reduced while they are decoded. Of
 * others above 25 million pixels every second, third, ... one is read, so a photograph takes at most about 100 MB whatever
 * its size. Safe for use from many threads.
 */
public final class PhotoReader {
    static final long MOST_PIXELS = 250_000_000;
    static final long MOST_WEBP_PIXELS = 64_000_000;
    static final long MOST_HEIF_PIXELS = 64_000_000;
    private static final long READ_PIXELS = 25_000_000;

    private final InstalledDecoders decoders;

    /** With the decoders installed on this computer for what this program does not decode itself. */
    public PhotoReader() {
        this(InstalledDecoders.here());
    }

    /** @param decoders for HEIC and AVIF */
    public PhotoReader(InstalledDecoders decoders) {
        this.decoders = decoders;
    }

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
            return byInstalledDecoder(file, type, facts, longEdges);
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
        return byImageReaders(file, type, facts, longEdges);
    }

    /** The claimed size is looked at before a decoder is called, and what it wrote is read like any other picture. */
    private Reading byInstalledDecoder(Path file, MediaType type, PhotoFacts facts, int[] longEdges)
            throws IOException {
        Optional<HeifHead> head = HeifHead.read(file);
        if (head.isEmpty()) {
            return Unread.because(facts, Message.of("photo.not-decoded"));
        }
        if (head.get().width() > MOST_HEIF_PIXELS / head.get().height()) {
            return Unread.tooManyPixels(facts, head.get().width(), head.get().height(), MOST_HEIF_PIXELS);
        }
        Optional<InstalledDecoder> decoder = decoders.find();
        if (decoder.isEmpty()) {
            return Unread.because(facts, Message.of("photo.not-shown", "type", type.name()));
        }
        String by =
                Message.of("photo.decoded-by", "decoder", decoder.get().name()).inEnglish();
        return decoder.get()
                .decode(
                        file,
                        (pixels, upright) -> {
                            int orientation =
                                    upright ? 1 : PhotoFactsReader.read(pixels).orientation();
                            MediaType written = upright ? MediaType.PNG : MediaType.TIFF;
                            Reading reading = byImageReaders(pixels, written, facts.turned(orientation), longEdges);
                            return noted(reading, by, head.get());
                        },
                        why -> Unread.because(facts, why));
    }

    private static Reading noted(Reading reading, String by, HeifHead head) {
        List<String> notes = new ArrayList<>();
        if (!reading.sizes().isEmpty()) {
            notes.add(by);
            if (head.colourOnlyByNumber()) {
                notes.add(Message.of(
                                "photo.colours-by-number", "primaries", head.primaries(), "transfer", head.transfer())
                        .inEnglish());
            }
        }
        notes.addAll(reading.notes());
        return new Reading(reading.sizes(), reading.width(), reading.height(), notes, reading.measured());
    }

    /** Opens the bytes for one reader. */
    @FunctionalInterface
    private interface Input {
        @Nullable
        ImageInputStream open() throws IOException;
    }

    /**
     * One reader after another, until one understands the file: one is stricter than another about what the pixels do not need.
     * Metadata are not asked of them; those of a palette PNG, which Java's reader reads all the same, are left out at last.
     */
    private static Reading byImageReaders(Path file, MediaType type, PhotoFacts facts, int[] longEdges)
            throws IOException {
        List<Exception> faults = new ArrayList<>();
        Decoding decoding = reader -> decode(reader, file, type, facts, longEdges);
        Optional<Reading> reading = attempted(() -> ImageIO.createImageInputStream(file.toFile()), decoding, faults);
        if (reading.isEmpty() && type == MediaType.PNG) {
            byte[] pixels = PngChunks.pixelsOnly(file);
            reading = attempted(
                    () -> new MemoryCacheImageInputStream(new ByteArrayInputStream(pixels)), decoding, faults);
        }
        return reading.orElseGet(() -> Unread.because(
                facts,
                faults.isEmpty()
                        ? Message.of("photo.no-decoder", "type", type.name())
                        : Unread.undecoded(faults.get(0))));
    }

    @FunctionalInterface
    private interface Decoding {
        Reading by(ImageReader reader) throws IOException;
    }

    private static Optional<Reading> attempted(Input input, Decoding decoding, List<Exception> faults)
            throws IOException {
        int count = 1;
        for (int which = 0; which < count; which++) {
            try (ImageInputStream in = input.open()) {
                if (in == null) {
                    throw new IOException(
                            Message.of("photo.cannot-open", "file", "").inEnglish());
                }
                List<ImageReader> readers = new ArrayList<>();
                ImageIO.getImageReaders(in).forEachRemaining(readers::add);
                count = readers.size();
                if (count == 0) {
                    return Optional.empty();
                }
                try {
                    readers.get(which).setInput(in, true, true);
                    return Optional.of(decoding.by(readers.get(which)));
                } catch (IOException | RuntimeException e) {
                    faults.add(e);
                } finally {
                    readers.forEach(ImageReader::dispose);
                }
            }
        }
        return Optional.empty();
    }

    private static Reading decode(ImageReader reader, Path file, MediaType type, PhotoFacts facts, int[] longEdges)
            throws IOException {
        long width = reader.getWidth(0);
        long height = reader.getHeight(0);
        long most = type == MediaType.WEBP ? MOST_WEBP_PIXELS : MOST_PIXELS;
        if (width * height > most) {
            return Unread.tooManyPixels(facts, width, height, most);
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
            profile = EmbeddedProfile.ofPng(file, notes);
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

    static Integer upright(PhotoFacts facts, long side, long other) {
        return (int) (facts.sideways() ? other : side);
    }

    static void note(List<String> notes, String warning) {
        String sentence = Message.of("photo.while-decoding", "warning", warning).inEnglish();
        if (!notes.contains(sentence)) {
            notes.add(sentence);
        }
    }
}
