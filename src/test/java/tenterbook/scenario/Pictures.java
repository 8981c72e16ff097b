package tenterbook.scenario;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;

/** Pictures made for tests. */
final class Pictures {
    private Pictures() {}

    /** A cloth-blue picture with a lighter half; {@code number} makes its bytes differ from every other's. */
    static byte[] jpeg(int number) throws IOException {
        BufferedImage image = new BufferedImage(320, 200, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(new Color(0x2f4a6d));
        graphics.fillRect(0, 0, 320, 200);
        graphics.setColor(new Color(0xb9c7d6));
        graphics.fillRect(160, 0, 160, 200);
        graphics.dispose();
        for (int bit = 0; bit < 24; bit++) {
            int shade = (number >> bit & 1) == 0 ? 0x101010 : 0xf0f0f0;
            for (int i = 0; i < 64; i++) {
                image.setRGB(8 * bit + i % 8, i / 8, shade);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", bytes);
        return bytes.toByteArray();
    }

    /** A blue cloth in the middle half of a beige wall, 400 × 300 pixels. */
    static byte[] hung(Color wall, Color cloth) throws IOException {
        SplittableRandom random = new SplittableRandom(7);
        BufferedImage image = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 300; y++) {
            for (int x = 0; x < 400; x++) {
                Color colour = x >= 100 && x < 300 && y >= 75 && y < 225 ? cloth : wall;
                int grain = random.nextInt(9) - 4;
                image.setRGB(
                        x,
                        y,
                        new Color(colour.getRed() + grain, colour.getGreen() + grain, colour.getBlue() + grain)
                                .getRGB());
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", bytes);
        return bytes.toByteArray();
    }

    /**
     * Cloth of 400 × 300 pixels with soft pale blots, always the same ones for one {@code seed}, on a ground; moved to the right
     * and down by so many pixels, as a camera that stood elsewhere sees it.
     */
    static byte[] cloth(long seed, Color ground, int right, int down) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] blots = new double[60][];
        for (int i = 0; i < blots.length; i++) {
            blots[i] = new double[] {
                random.nextDouble() * 440 - 20, random.nextDouble() * 340 - 20, 8 + random.nextDouble() * 20
            };
        }
        BufferedImage image = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 300; y++) {
            for (int x = 0; x < 400; x++) {
                double left = 1;
                for (double[] blot : blots) {
                    double across = x - right - blot[0];
                    double deep = y - down - blot[1];
                    left *= 1 - 0.8 * Math.exp(-(across * across + deep * deep) / (blot[2] * blot[2]));
                }
                int grain = random.nextInt(5) - 2;
                int rgb = 0;
                for (int level : new int[] {ground.getRed(), ground.getGreen(), ground.getBlue()}) {
                    int mixed = (int) Math.round(level * left + 222 * (1 - left)) + grain;
                    rgb = rgb << 8 | Math.max(0, Math.min(255, mixed));
                }
                image.setRGB(x, y, rgb);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return bytes.toByteArray();
    }

    /** Plain cloth of so many pixels, quickly made and small until it is decoded. */
    static byte[] largePng(int width, int height) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR), "png", bytes);
        return bytes.toByteArray();
    }

    /** A PNG whose compressed comment (ISO/IEC 15948, zTXt) fills {@code length} bytes once it is read. */
    static byte[] pngWithCommentOf(int length) throws IOException {
        ByteArrayOutputStream chunk = new ByteArrayOutputStream();
        chunk.writeBytes(new byte[] {'z', 'T', 'X', 't', 'C', 'o', 'm', 'm', 'e', 'n', 't', 0, 0});
        try (DeflaterOutputStream comment = new DeflaterOutputStream(chunk)) {
            byte[] blank = new byte[1 << 20];
            for (int left = length; left > 0; left -= blank.length) {
                comment.write(blank, 0, Math.min(left, blank.length));
            }
        }
        CRC32 sum = new CRC32();
        sum.update(chunk.toByteArray());
        byte[] plain = largePng(40, 20);
        int header = 8 + 25;
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        png.write(plain, 0, header);
        png.writeBytes(ByteBuffer.allocate(4).putInt(chunk.size() - 4).array());
        png.writeBytes(chunk.toByteArray());
        png.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
        png.write(plain, header, plain.length - header);
        return png.toByteArray();
    }

    /**
     * The same picture with an Exif segment that says it must be turned (JEITA CP-3451: tag 0x0112, a SHORT, in big-endian
     * TIFF within APP1).
     */
    static byte[] turned(byte[] jpeg, int orientation) {
        byte[] segment = {
            (byte) 0xff,
            (byte) 0xe1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            1,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0,
            0,
            0,
            0,
            0
        };
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.writeBytes(segment);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }
}
