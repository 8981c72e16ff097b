package tenterbook.sample;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Things about the cloth: the grey card, pegs and cord, paper tickets, a sewn label. Drawn with alpha over the picture. */
final class Props {
    /** Encoded sRGB of an 18 per cent reflector. */
    private static final int GREY = 118;

    private static final Font FACE = face();
    final BufferedImage image;
    List<double[]> greyCard = List.of();
    private final Graphics2D g;

    Props(int width, int height) {
        image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    private static Font face() {
        try (InputStream in = Props.class.getResourceAsStream("/fonts/Alegreya_700Bold.ttf")) {
            if (in == null) {
                throw new IllegalStateException(
                        "Drawing a sample ticket needs /fonts/Alegreya_700Bold.ttf on the class path; it is not there");
            }
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException | FontFormatException e) {
            throw new IllegalStateException("The ticket's typeface Alegreya could not be read", e);
        }
    }

    /** Puts the card's middle at (x, y), its long side size pixels. */
    void greyCard(double x, double y, double size, double degrees) {
        AffineTransform t = AffineTransform.getTranslateInstance(x, y);
        t.rotate(Math.toRadians(degrees));
        double w = size / 2;
        double h = size * 0.32;
        g.setColor(new Color(GREY, GREY, GREY));
        g.fill(t.createTransformedShape(new Rectangle2D.Double(-w, -h, 2 * w, 2 * h)));
        g.setColor(new Color(150, 150, 150));
        g.setStroke(new BasicStroke((float) Math.max(0.8, size / 90)));
        g.draw(t.createTransformedShape(new Path2D.Double(new java.awt.geom.Line2D.Double(-w, -h, w, -h))));
        double[] xy = {-w, -h, w, -h, w, h, -w, h};
        List<double[]> corners = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Point2D p = t.transform(new Point2D.Double(xy[2 * i], xy[2 * i + 1]), null);
            corners.add(new double[] {p.getX(), p.getY()});
        }
        greyCard = List.copyOf(corners);
    }

    /** A hand or a head: an ellipse of one skin colour, its middle at (x, y). */
    void skin(double x, double y, double width, double height, double degrees) {
        AffineTransform t = AffineTransform.getTranslateInstance(x, y);
        t.rotate(Math.toRadians(degrees));
        g.setColor(new Color(196, 146, 116));
        g.fill(t.createTransformedShape(new java.awt.geom.Ellipse2D.Double(-width / 2, -height / 2, width, height)));
    }

    /** A dark box with a pale lid, its middle at (x, y). */
    void box(double x, double y, double width, double height) {
        g.setColor(new Color(58, 44, 36));
        g.fill(new Rectangle2D.Double(x - width / 2, y - height / 2, width, height));
        g.setColor(new Color(206, 196, 172));
        g.fill(new Rectangle2D.Double(x - width / 2, y - height / 2, width, height / 5));
    }

    /** A blue bowl with white slip in it, its middle at (x, y). */
    void bowl(double x, double y, double size) {
        g.setColor(new Color(40, 66, 120));
        g.fill(new java.awt.geom.Ellipse2D.Double(x - size / 2, y - size / 2, size, size));
        g.setColor(new Color(226, 224, 216));
        g.fill(new java.awt.geom.Ellipse2D.Double(x - size * 0.38, y - size * 0.38, size * 0.76, size * 0.76));
    }

    void cord(double y, double width, double sagPixels, double thick) {
        Path2D path = new Path2D.Double();
        path.moveTo(-20, y - sagPixels);
        path.quadTo(width / 2, y + sagPixels, width + 20, y - sagPixels);
        g.setStroke(new BasicStroke((float) thick, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.setColor(new Color(150, 132, 104));
        g.draw(path);
        g.setStroke(new BasicStroke((float) (thick * 0.4)));
        g.setColor(new Color(196, 180, 150));
        g.draw(AffineTransform.getTranslateInstance(-0.2 * thick, -0.25 * thick).createTransformedShape(path));
    }

    /** A wooden peg holding at (x, y); s is pixels to the mm. */
    void peg(double x, double y, double s, Random random) {
        double k = Math.max(1, s * 1.15);
        AffineTransform t = AffineTransform.getTranslateInstance(x, y);
        t.rotate(random.nextGaussian() * 0.05);
        t.scale(k, k);
        Color wood = new Color(196 + random.nextInt(14), 160 + random.nextInt(12), 112);
        double[][] sides = {{-5.2, 4.9}, {0.3, 4.9}};
        for (double[] side : sides) {
            g.setColor(side[0] < 0 ? wood : wood.darker());
            g.fill(t.createTransformedShape(new RoundRectangle2D.Double(side[0], -30, side[1], 62, 2.4, 6)));
            g.setColor(new Color(120, 88, 52, 90));
            g.setStroke(new BasicStroke((float) (0.35 * k)));
            g.draw(t.createTransformedShape(new java.awt.geom.Line2D.Double(side[0] + 2, -27, side[0] + 2.3, 28)));
        }
        g.setColor(new Color(126, 124, 120));
        for (int i = 0; i < 3; i++) {
            g.fill(t.createTransformedShape(new Rectangle2D.Double(-5.8, -6 + i * 2.6, 11.6, 1.6)));
        }
    }

    /** Stiff paper with a few words, its middle at (x, y). */
    void ticket(double x, double y, double height, double degrees, String words) {
        Font font = FACE.deriveFont((float) (height * 0.52));
        double w = g.getFontMetrics(font).stringWidth(words) + height * 0.9;
        AffineTransform t = AffineTransform.getTranslateInstance(x, y);
        t.rotate(Math.toRadians(degrees));
        g.setColor(new Color(238, 230, 210));
        g.fill(t.createTransformedShape(
                new RoundRectangle2D.Double(-w / 2, -height / 2, w, height, height / 8, height / 8)));
        g.setColor(new Color(120, 110, 96));
        g.fill(t.createTransformedShape(Carver.disc(-w / 2 + height * 0.24, 0, height * 0.075)));
        AffineTransform old = g.getTransform();
        g.transform(t);
        g.setFont(font);
        g.setColor(new Color(52, 44, 48));
        g.drawString(words, (float) (-w / 2 + height * 0.5), (float) (height * 0.18));
        g.setTransform(old);
    }

    /** A cotton label sewn on along both short sides. */
    void sewnLabel(double x, double y, double height, double degrees, String... lines) {
        double w = height * 2.1;
        AffineTransform old = g.getTransform();
        g.translate(x, y);
        g.rotate(Math.toRadians(degrees));
        g.setColor(new Color(232, 225, 208));
        g.fill(new Rectangle2D.Double(-w / 2, -height / 2, w, height));
        g.setColor(new Color(205, 196, 178, 120));
        g.setStroke(new BasicStroke(1));
        for (double v = -height / 2 + 2; v < height / 2; v += 3.2) {
            g.draw(new java.awt.geom.Line2D.Double(-w / 2, v, w / 2, v));
        }
        g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, new float[] {9, 7}, 0));
        g.setColor(new Color(58, 66, 98));
        for (int side = -1; side <= 1; side += 2) {
            double at = side * (w / 2 - height * 0.07);
            g.draw(new java.awt.geom.Line2D.Double(at, -height / 2 + 6, at, height / 2 - 6));
        }
        g.setColor(new Color(44, 48, 74));
        for (int i = 0; i < lines.length; i++) {
            g.setFont(FACE.deriveFont((float) (height * (i == 0 ? 0.24 : 0.17))));
            float textWidth = g.getFontMetrics().stringWidth(lines[i]);
            g.drawString(lines[i], -textWidth / 2, (float) (height * (-0.16 + 0.27 * i)));
        }
        g.setTransform(old);
    }

    /** Coverage of what was drawn, 0 to 1, at a quarter of the size. */
    Field coverage() {
        Field out = new Field(image.getWidth() / 4 + 1, image.getHeight() / 4 + 1);
        for (int y = 0; y < out.height; y++) {
            for (int x = 0; x < out.width; x++) {
                int px = Math.min(image.getWidth() - 1, x * 4 + 1);
                int py = Math.min(image.getHeight() - 1, y * 4 + 1);
                out.values[y * out.width + x] = (image.getRGB(px, py) >>> 24) / 255f;
            }
        }
        return out;
    }
}
