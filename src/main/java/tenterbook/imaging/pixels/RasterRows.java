package tenterbook.imaging.pixels;

import java.awt.Graphics2D;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;

/**
 * The bare numbers of a decoded picture, before any colour profile: grey or RGB, 8 or 16 bits, with or without alpha.
 *
 * <p>Java's own way from grey to RGB takes the grey as linear light and brightens it, and its way through a profile is
 * slow on large pictures; so the numbers are taken as they are, and the profile is applied after reducing.
 */
final class RasterRows implements PixelRows {
    private final Raster raster;
    private final int bands;
    private final int shift;
    private final int[] samples;
    private final byte[] bytes;
    private final PixelInterleavedSampleModel layout;

    private RasterRows(Raster raster) {
        this.raster = raster;
        bands = raster.getNumBands();
        shift = raster.getSampleModel().getSampleSize(0) - 8;
        samples = new int[bands * raster.getWidth()];
        boolean plain = shift == 0
                && raster.getDataBuffer() instanceof DataBufferByte
                && raster.getSampleModel() instanceof PixelInterleavedSampleModel
                && raster.getParent() == null;
        bytes = plain ? ((DataBufferByte) raster.getDataBuffer()).getData() : null;
        layout = plain ? (PixelInterleavedSampleModel) raster.getSampleModel() : null;
    }

    static PixelRows of(BufferedImage image) {
        ColorModel model = image.getColorModel();
        int space = model.getColorSpace().getType();
        int bits = image.getSampleModel().getSampleSize(0);
        boolean bare = model instanceof ComponentColorModel
                && (space == ColorSpace.TYPE_RGB || space == ColorSpace.TYPE_GRAY)
                && (bits == 8 || bits == 16)
                && !model.isAlphaPremultiplied();
        return new RasterRows(bare ? image.getRaster() : redrawn(image).getRaster());
    }

    /** Palettes, bit masks, CMYK and other rarities: Java's own conversion. */
    private static BufferedImage redrawn(BufferedImage image) {
        BufferedImage copy = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_4BYTE_ABGR);
        Graphics2D graphics = copy.createGraphics();
        graphics.drawImage(image, 0, 0, null);
        graphics.dispose();
        return copy;
    }

    @Override
    public int width() {
        return raster.getWidth();
    }

    @Override
    public int height() {
        return raster.getHeight();
    }

    @Override
    public boolean opaque() {
        return bands == 1 || bands == 3;
    }

    @Override
    public void row(int y, int[] out) {
        if (bytes != null) {
            plainRow(y, out);
            return;
        }
        raster.getPixels(raster.getMinX(), raster.getMinY() + y, width(), 1, samples);
        for (int x = 0, at = 0; x < width(); x++, at += bands) {
            int first = samples[at] >> shift;
            int second = bands >= 3 ? samples[at + 1] >> shift : first;
            int third = bands >= 3 ? samples[at + 2] >> shift : first;
            int alpha = bands == 2 || bands == 4 ? samples[at + bands - 1] >> shift : 255;
            out[x] = alpha << 24 | first << 16 | second << 8 | third;
        }
    }

    private void plainRow(int y, int[] out) {
        int[] offsets = layout.getBandOffsets();
        int step = layout.getPixelStride();
        int red = offsets[0];
        int green = bands >= 3 ? offsets[1] : red;
        int blue = bands >= 3 ? offsets[2] : red;
        int alpha = bands == 2 || bands == 4 ? offsets[bands - 1] : -1;
        int at = raster.getDataBuffer().getOffset() + y * layout.getScanlineStride();
        for (int x = 0; x < out.length; x++, at += step) {
            int opacity = alpha < 0 ? 255 : bytes[at + alpha] & 0xff;
            out[x] = opacity << 24
                    | (bytes[at + red] & 0xff) << 16
                    | (bytes[at + green] & 0xff) << 8
                    | bytes[at + blue] & 0xff;
        }
    }
}
