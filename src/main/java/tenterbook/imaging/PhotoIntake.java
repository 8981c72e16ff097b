package tenterbook.imaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Palette;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.imaging.pixels.PhotoReader;
import tenterbook.imaging.pixels.RgbPicture;

/**
 * Takes a photograph in: keeps the original, reads its metadata, and decodes it once for its previews, its palette and
 * where its cloth is.
 *
 * <p>Safe for use from many threads. A JPEG photograph in work takes its file's length and about 50 MB, others up to 150 MB;
 * as many are in work as fit into memory, and the others wait for their turn.
 */
public final class PhotoIntake {
    private static final int LONGEST_NAME = 200;

    private final Originals originals;
    private final Previews previews;
    private final ClothTable cloths;
    private final PhotoReader reader;

    /** @param cloths keeps where the cloth is on each photograph */
    public PhotoIntake(Originals originals, Previews previews, ClothTable cloths) {
        this(originals, previews, cloths, new PhotoReader());
    }

    PhotoIntake(Originals originals, Previews previews, ClothTable cloths, PhotoReader reader) {
        this.reader = reader;
        this.originals = originals;
        this.previews = previews;
        this.cloths = cloths;
    }

    /** The same with the usual limit, {@link Originals#LIMIT_BYTES}. */
    public Photo take(InputStream bytes, String originalName) throws IOException {
        return take(bytes, originalName, Originals.LIMIT_BYTES);
    }

    /**
     * Keeps a photograph and says what it is. When this returns, the original is synced into place.
     *
     * @param originalName as the person knows it; folders and control characters are dropped
     * @param limitBytes a longer file is refused
     * @throws PhotoRefused if it is empty, too large, broken off or no picture; nothing is kept
     * @throws IOException if the stream or the disk fails
     */
    public Photo take(InputStream bytes, String originalName, long limitBytes) throws IOException {
        StoredOriginal stored = originals.store(bytes, limitBytes);
        return DecodePermits.take(() -> described(stored, originalName));
    }

    /**
     * Looks once more at a photograph that could not be shown, as when a decoder has been installed since.
     *
     * @return its record as it is now; empty if it still cannot be shown or its original is not here
     * @throws IOException if the file cannot be read
     */
    public Optional<Photo> again(Photo known) throws IOException {
        Optional<Path> original = originals.find(known.digest());
        Optional<MediaType> type = original.isPresent() ? MediaType.of(original.get()) : Optional.empty();
        if (type.isEmpty()) {
            return Optional.empty();
        }
        StoredOriginal stored = new StoredOriginal(known.digest(), original.get(), known.bytes(), type.get(), true);
        Photo seen = DecodePermits.take(() -> described(stored, known.originalName()));
        return seen.viewable() ? Optional.of(seen.withCloth(known.cloth())) : Optional.empty();
    }

    private Photo described(StoredOriginal stored, String originalName) throws IOException {
        PhotoFacts facts = PhotoFactsReader.read(stored.path());
        PhotoReader.Reading reading = reader.read(stored.path(), stored.mediaType(), facts, Previews.EDGES);
        List<RgbPicture> sizes = reading.sizes();
        if (!sizes.isEmpty() && !(stored.alreadyThere() && previews.complete(stored.digest()))) {
            previews.write(stored.digest(), sizes);
        }
        if (!sizes.isEmpty()) {
            cloths.look(stored.digest(), sizes.get(0).pixels());
        }
        List<PaletteColour> palette = sizes.isEmpty() ? List.of() : palette(sizes.get(sizes.size() - 1));
        List<String> notes = new ArrayList<>(reading.notes());
        notes.addAll(facts.warnings());
        return new Photo(
                stored.digest(),
                plain(originalName),
                stored.bytes(),
                stored.mediaType().mime(),
                reading.width(),
                reading.height(),
                facts.orientation(),
                taken(facts),
                facts.camera(),
                facts.lens(),
                facts.iccProfile(),
                facts.hasGps(),
                !sizes.isEmpty(),
                notes,
                palette,
                Photo.UNCALIBRATED,
                List.of());
    }

    /** Of the smallest size: its pixels are means over the cloth's threads, and few enough to be looked at quickly. */
    private static List<PaletteColour> palette(RgbPicture small) {
        return Palette.of(small.argb(), small.width(), small.height());
    }

    private static @Nullable String taken(PhotoFacts facts) {
        if (facts.takenLocal() == null || facts.takenOffset() == null) {
            return facts.takenLocal();
        }
        return facts.takenLocal() + facts.takenOffset();
    }

    private static String plain(@Nullable String name) {
        if (name == null) {
            return "";
        }
        String last = name.substring(1 + Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')));
        String clean = last.replaceAll("\\p{Cntrl}", "").strip();
        return clean.substring(0, Math.min(clean.length(), LONGEST_NAME));
    }
}
