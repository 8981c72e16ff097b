package tenterbook.imaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Palette;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.CardReading;
import tenterbook.colour.target.CardRefused;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.imaging.pixels.Jpeg;
import tenterbook.imaging.pixels.PhotoReader;
import tenterbook.imaging.pixels.RgbPicture;
import tenterbook.ledger.file.TemporaryFolder;

/**
 * A picture that is looked at once, to search by its colours, and of which nothing is kept.
 *
 * @param cloth where the cloth is on it; its colours are corrected as {@code correction} says
 * @param picture main colours of the whole picture, corrected the same way
 * @param card the grey card on it by which its colours are corrected; null where there is none
 * @param correction {@link Correction#NONE} without a card
 * @param pixels of it, upright, long edge at most 2,048 pixels
 * @param preview a JPEG of it, upright, without metadata
 */
public record UnkeptPicture(
        SeenCloth cloth,
        List<PaletteColour> picture,
        @Nullable CardOutline card,
        Correction correction,
        Pixels pixels,
        byte[] preview,
        int width,
        int height) {
    /** Long edge of the preview, in pixels. */
    private static final int SHOWN = 480;

    /**
     * Takes a file in, looks at it and forgets it. A card is taken for one of 18 % grey.
     *
     * @param limitBytes a longer file is refused; {@link Originals#LIMIT_BYTES} as for photographs that are kept
     * @throws PhotoRefused if it is empty, too large, broken off, no picture, or one that cannot be decoded
     * @throws IOException if the stream or the disk fails
     */
    public static UnkeptPicture look(InputStream bytes, long limitBytes) throws IOException {
        try (TemporaryFolder folder = new TemporaryFolder("tenterbook-picture")) {
            Path file = folder.path().resolve("picture");
            MediaType type = Originals.received(bytes, file, limitBytes);
            return DecodePermits.take(() -> seen(file, type));
        }
    }

    private static UnkeptPicture seen(Path file, MediaType type) throws IOException {
        PhotoReader.Reading reading =
                new PhotoReader().read(file, type, PhotoFactsReader.read(file), PhotoMeasure.LONG_EDGE, SHOWN);
        Pixels pixels = reading.measured().orElseThrow(() -> PhotoRefused.of("photo.not-looked-at"));
        RgbPicture small = reading.sizes().get(1);
        Optional<CardOutline> card = CardFinder.sure(pixels);
        Correction correction = card.map(outline -> correction(pixels, outline)).orElse(Correction.NONE);
        SeenCloth seen = SeenCloth.look(
                pixels, List.of(), () -> card.map(CardOutline::whole).stream().toList());
        return new UnkeptPicture(
                new SeenCloth(seen.outline(), corrected(seen.palette(), correction)),
                corrected(Palette.of(small.argb(), small.width(), small.height()), correction),
                correction.likelyError() == null ? null : card.orElseThrow(),
                correction,
                pixels,
                Jpeg.encode(small, Previews.QUALITY),
                small.width(),
                small.height());
    }

    private static Correction correction(Pixels pixels, CardOutline card) {
        try {
            return Correction.byGrey(CardReading.of(pixels, card.inner()), KnownCard.grey18());
        } catch (CardRefused e) {
            // Overexposed, in shade or of another colour: the picture counts as one without a card.
            return Correction.NONE;
        }
    }

    private static List<PaletteColour> corrected(List<PaletteColour> palette, Correction correction) {
        return palette.stream()
                .map(each -> new PaletteColour(
                        correction.apply(LinearRgb.of(each.colour())).lab(), each.share()))
                .toList();
    }

    /** The colours to search by: those of the cloth, else of the whole picture; the greatest share first. */
    public List<PaletteColour> colours() {
        return outline().edge().found() ? cloth.palette() : picture;
    }

    public ClothOutline outline() {
        return cloth.outline();
    }
}
