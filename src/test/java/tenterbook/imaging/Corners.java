package tenterbook.imaging;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** A picture whose four corners differ, so that every turn and mirroring shows. */
public final class Corners {
    public static final int UPPER_LEFT = 0xc83232;
    public static final int UPPER_RIGHT = 0x32a050;
    public static final int LOWER_LEFT = 0x3250b4;
    public static final int LOWER_RIGHT = 0xe6c83c;

    private Corners() {}

    public static BufferedImage image(int width, int height, int type) {
        BufferedImage image = new BufferedImage(width, height, type);
        Graphics2D graphics = image.createGraphics();
        paint(graphics, UPPER_LEFT, 0, 0, width, height);
        paint(graphics, UPPER_RIGHT, width / 2, 0, width, height);
        paint(graphics, LOWER_LEFT, 0, height / 2, width, height);
        paint(graphics, LOWER_RIGHT, width / 2, height / 2, width, height);
        graphics.dispose();
        return image;
    }

    private static void paint(Graphics2D graphics, int rgb, int x, int y, int width, int height) {
        graphics.setColor(new Color(rgb));
        graphics.fillRect(x, y, width, height);
    }

    public static byte[] encoded(BufferedImage image, String format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        if (!ImageIO.write(image, format, bytes)) {
            throw new IOException("No writer for " + format);
        }
        return bytes.toByteArray();
    }

    /** Quality 0.98, so that a flat colour comes back within a few levels. */
    public static byte[] jpeg(int width, int height) throws IOException {
        return jpeg(image(width, height, BufferedImage.TYPE_INT_RGB));
    }

    public static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(0.98f);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    public static byte[] fixture(String name) throws IOException {
        try (InputStream in = Corners.class.getResourceAsStream("/photo/" + name)) {
            return in.readAllBytes();
        }
    }
}
