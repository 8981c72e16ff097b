package tenterbook.sample;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.List;

/**
 * What is carved into one board state, as vector outlines in board millimetres, origin at the upper left.
 *
 * <p>Cuts are applied in order: a land raises wood that pinches the cloth, a channel cuts it away again, and a cell is a
 * channel walled in by land, which only the hole bored into it can feed.
 *
 * @param boardState for example {@code B02-II}
 * @param widthMm width of the carved face, greater than 0
 * @param heightMm height of the carved face, greater than 0
 */
record Motif(String boardState, double widthMm, double heightMm, List<Cut> cuts, List<Hole> holes) {

    enum Kind {
        LAND,
        CHANNEL,
        CELL
    }

    record Cut(Kind kind, Shape outline) {}

    record Hole(double x, double y, double radiusMm) {}

    Motif {
        cuts = List.copyOf(cuts);
        holes = List.copyOf(holes);
    }

    /** 1 on the lands, 0 in channels and cells; edges are antialiased. */
    Field lands(double pixelsPerMm) {
        return raster(pixelsPerMm, Kind.LAND);
    }

    /** 1 in the walled cells, 0 elsewhere. */
    Field cells(double pixelsPerMm) {
        return raster(pixelsPerMm, Kind.CELL);
    }

    /** 1 wherever a land or a cell was drawn. */
    Field ink(double pixelsPerMm) {
        Field all = lands(pixelsPerMm);
        Field cells = cells(pixelsPerMm);
        for (int i = 0; i < all.values.length; i++) {
            all.values[i] = Math.max(all.values[i], cells.values[i]);
        }
        return all;
    }

    private Field raster(double pixelsPerMm, Kind white) {
        int width = (int) Math.round(widthMm * pixelsPerMm);
        int height = (int) Math.round(heightMm * pixelsPerMm);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.scale(width / widthMm, height / heightMm);
        for (Cut cut : cuts) {
            g.setColor(cut.kind() == white ? Color.WHITE : Color.BLACK);
            g.fill(cut.outline());
        }
        g.dispose();
        Field field = new Field(width, height);
        byte[] grey = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        for (int i = 0; i < grey.length; i++) {
            field.values[i] = (grey[i] & 0xff) / 255f;
        }
        return field;
    }
}
