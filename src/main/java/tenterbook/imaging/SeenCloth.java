package tenterbook.imaging;

import java.util.List;
import tenterbook.colour.palette.PaletteColour;
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
}
