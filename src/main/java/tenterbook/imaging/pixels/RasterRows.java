package tenterbook.imaging.pixels;

import java.awt.Graphics2D;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

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
    /** Of a picture whose rows stand as they are wanted, as most do; otherwise null. */
    private final byte @Nullable [] bytes;

    private RasterRows(Raster raster) {
        this.raster = raster;
        bands = raster.getNumBands();
        shift = raster.getSampleModel().getSampleSize(0) - 8;
        samples = new int[bands * raster.getWidth()];
        boolean inOrder = bands >= 3
                && raster.getParent() == null
                && raster.getDataBuffer() instanceof DataBufferByte buffer
                && buffer.getOffset() == 0
                && raster.getSampleModel() instanceof PixelInterleavedSampleModel model
                && model.getScanlineStride() == bands * raster.getWidth()
                && Arrays.equals(model.getBandOffsets(), Arrays.copyOf(new int[] {0, 1, 2, 3}, bands));
        bytes = inOrder ? ((DataBufferByte) raster.getDataBuffer()).getData() : null;
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
    public int bands() {
        return bands == 1 || bands == 3 ? 3 : 4;
    }

    @Override
    public void row(int y, byte[] out) {
        if (bytes != null) {
            System.arraycopy(bytes, y * out.length, out, 0, out.length);
            return;
        }
        raster.getPixels(raster.getMinX(), raster.getMinY() + y, width(), 1, samples);
        for (int at = 0, to = 0; at < samples.length; at += bands) {
            out[to++] = (byte) (samples[at] >> shift);
            out[to++] = (byte) (samples[bands >= 3 ? at + 1 : at] >> shift);
            out[to++] = (byte) (samples[bands >= 3 ? at + 2 : at] >> shift);
            if (bands == 2 || bands == 4) {
                out[to++] = (byte) (samples[at + bands - 1] >> shift);
            }
        }
    }
}
