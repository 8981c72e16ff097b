package tenterbook.imaging.pixels;

import java.awt.Point;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.function.Consumer;

/**
 * A destination for a decoder that keeps nothing: each row is handed on as it comes, so that a large picture is never
 * held whole.
 *
 * <p>Java's JPEG decoder puts a row at a time, from the top. It does not promise to; so {@link #complete} says whether
 * every row came, once and in order, and if not the picture has to be read the ordinary way.
 */
final class DecoderRowSink extends WritableRaster {
    private final Consumer<byte[]> sink;
    private int next;
    private boolean strange;

    private DecoderRowSink(PixelInterleavedSampleModel model, Consumer<byte[]> sink) {
        super(model, new DataBufferByte(1), new Point(0, 0));
        this.sink = sink;
    }

    /** @param sink gets each row as red, green, blue, ...; the array is used again for the next row */
    static DecoderRowSink of(int width, int height, Consumer<byte[]> sink) {
        return new DecoderRowSink(RgbBytes.model(width, height), sink);
    }

    /** To be given to the decoder; its pixels cannot be read. */
    BufferedImage image() {
        return RgbBytes.image(this);
    }

    boolean complete() {
        return !strange && next == getHeight();
    }

    @Override
    public void setRect(int x, int y, Raster row) {
        boolean expected = x == 0
                && y == next
                && row.getWidth() == getWidth()
                && row.getHeight() == 1
                && row.getSampleModel() instanceof PixelInterleavedSampleModel model
                && model.getPixelStride() == 3
                && model.getBandOffsets()[0] == 0
                && model.getBandOffsets()[2] == 2
                && row.getDataBuffer() instanceof DataBufferByte
                && row.getDataBuffer().getOffset() == 0;
        if (!expected || strange) {
            strange = true;
            return;
        }
        sink.accept(((DataBufferByte) row.getDataBuffer()).getData());
        next++;
    }
}
