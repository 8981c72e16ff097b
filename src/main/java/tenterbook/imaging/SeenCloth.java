package tenterbook.imaging;

import java.util.List;
import java.util.function.Supplier;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Palette;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.CardOutline;
import tenterbook.imaging.cloth.ClothFinder;
import tenterbook.imaging.cloth.ClothOutline;

/**
 * The cloth on a photograph.
 *
 * @param palette main colours of what the outline encloses; none without an outline
 */
public record SeenCloth(ClothOutline outline, List<PaletteColour> palette) {
    /** Of a photograph that cannot be shown. */
    public static final SeenCloth NONE = new SeenCloth(ClothOutline.unseen(), List.of());

    /** Of a photograph that is being looked at. */
    public static final SeenCloth NOT_YET =
            new SeenCloth(new ClothOutline(ClothOutline.Edge.NOT_YET, List.of(), 0), List.of());

    public SeenCloth {
        palette = List.copyOf(palette);
    }

    /**
     * Looks for the cloth on a picture.
     *
     * @param drawn the outline that a person drew; empty where nobody did
     * @param cards where a person marked cards: what they cover is not cloth. Where nobody marked one, what surely is a grey card
     *     does not count either
     */
    static SeenCloth look(Pixels picture, List<Corner> drawn, List<Region> cards) {
        return look(
                picture,
                drawn,
                () -> cards.isEmpty()
                        ? CardFinder.sure(picture).map(CardOutline::whole).stream()
                                .toList()
                        : cards);
    }

    /** @param apart what is not cloth though it lies in the outline; asked for only where there is one */
    static SeenCloth look(Pixels picture, List<Corner> drawn, Supplier<List<Region>> apart) {
        LabRaster raster = LabRaster.of(picture, ClothFinder.LONG_EDGE);
        ClothOutline outline = drawn.isEmpty() ? ClothFinder.find(raster) : ClothOutline.drawn(drawn);
        return new SeenCloth(
                outline,
                outline.edge().found() ? Palette.of(raster, new Region(outline.corners()), apart.get()) : List.of());
    }
}
