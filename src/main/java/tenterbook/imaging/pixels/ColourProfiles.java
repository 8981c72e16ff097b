package tenterbook.imaging.pixels;

import java.awt.color.CMMException;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBufferInt;
import java.awt.image.DirectColorModel;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import tenterbook.words.Message;

/** From the colours of an embedded profile (ICC.1) to sRGB. */
final class ColourProfiles {
    private static final int GRID = 12;

    private ColourProfiles() {}

    /** The profile that a decoded picture carries, if it is one of RGB and not sRGB itself. */
    static Optional<ICC_Profile> of(BufferedImage image) {
        ColorSpace space = image.getColorModel().getColorSpace();
        return space instanceof ICC_ColorSpace icc && space.getType() == ColorSpace.TYPE_RGB && !space.isCS_sRGB()
                ? Optional.of(icc.getProfile())
                : Optional.empty();
    }

    /** The kind of image that keeps the numbers of a file with a profile of RGB; Java's JPEG reader else makes them sRGB, clipped. */
    static Optional<ImageTypeSpecifier> ownColours(ImageReader reader) throws IOException {
        for (Iterator<ImageTypeSpecifier> types = reader.getImageTypes(0); types.hasNext(); ) {
            ImageTypeSpecifier type = types.next();
            ColorSpace space = type.getColorModel().getColorSpace();
            if (space instanceof ICC_ColorSpace && space.getType() == ColorSpace.TYPE_RGB && !space.isCS_sRGB()) {
                return Optional.of(type);
            }
        }
        return Optional.empty();
    }

    /** A profile from its bytes; empty, with a warning, if it is broken, and empty if it is none of RGB. */
    static Optional<ICC_Profile> parse(byte[] bytes, List<String> warnings) {
        try {
            ICC_Profile profile = ICC_Profile.getInstance(bytes);
            return profile.getColorSpaceType() == ColorSpace.TYPE_RGB ? Optional.of(profile) : Optional.empty();
        } catch (IllegalArgumentException | CMMException e) {
            warnings.add(broken(e));
            return Optional.empty();
        }
    }

    /**
     * The same picture in sRGB; unchanged if the profile is sRGB by any name, and unchanged, with a warning, if it cannot be
     * applied. Opacity stays.
     */
    static RgbPicture toSrgb(RgbPicture picture, ICC_Profile profile, List<String> warnings) {
        try {
            return changesNothing(profile) ? picture : converted(picture, profile);
        } catch (IllegalArgumentException | CMMException e) {
            warnings.add(broken(e));
            return picture;
        }
    }

    /** Whether no colour of a grid over the whole cube is moved by more than one level. */
    private static boolean changesNothing(ICC_Profile profile) {
        int[] grid = new int[GRID * GRID * GRID];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = 0xff000000 | level(i / GRID / GRID) << 16 | level(i / GRID % GRID) << 8 | level(i % GRID);
        }
        int[] moved =
                converted(new RgbPicture(grid, GRID * GRID, GRID), profile).argb();
        for (int i = 0; i < grid.length; i++) {
            for (int shift = 0; shift <= 16; shift += 8) {
                if (Math.abs((grid[i] >> shift & 0xff) - (moved[i] >> shift & 0xff)) > 1) {
                    return false;
                }
            }
        }
        return true;
    }

    private static int level(int step) {
        return 255 * step / (GRID - 1);
    }

    private static RgbPicture converted(RgbPicture picture, ICC_Profile profile) {
        BufferedImage tagged = tagged(picture, new ICC_ColorSpace(profile));
        BufferedImage plain = new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_INT_ARGB);
        new ColorConvertOp(null).filter(tagged, plain);
        int[] argb = ((DataBufferInt) plain.getRaster().getDataBuffer()).getData();
        return new RgbPicture(argb, picture.width(), picture.height());
    }

    private static BufferedImage tagged(RgbPicture picture, ColorSpace space) {
        DirectColorModel model = new DirectColorModel(
                space, 32, 0xff0000, 0xff00, 0xff, 0xff000000, false, java.awt.image.DataBuffer.TYPE_INT);
        WritableRaster raster = model.createCompatibleWritableRaster(picture.width(), picture.height());
        System.arraycopy(
                picture.argb(), 0, ((DataBufferInt) raster.getDataBuffer()).getData(), 0, picture.argb().length);
        return new BufferedImage(model, raster, false, null);
    }

    private static String broken(RuntimeException e) {
        return Message.of("photo.broken-profile", "why", String.valueOf(e.getMessage()))
                .inEnglish();
    }
}
