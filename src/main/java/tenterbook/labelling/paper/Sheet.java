package tenterbook.labelling.paper;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PdfDocument.Box;
import tenterbook.typeset.PrintColour;
import tenterbook.words.Refusal;

/**
 * The places of labels on a page, and the cut marks. Marks are 1 mm off the label, in the gutter, so that no ink stays on a
 * label cut a little wide; farther off where colour bleeds.
 *
 * @param boxes of the labels as placed, in millimetres from the page's upper left corner, in order of filling
 * @param first how many boxes of the first page are skipped
 * @param turned whether labels are on their side, their top to the right
 * @param marked whether there is room for marks and the test bar, and cutting to do
 * @param correction of the printer's offset and scale, for the whole page
 */
record Sheet(
        double widthMm,
        double heightMm,
        List<Box> boxes,
        int first,
        boolean turned,
        boolean marked,
        double bleedMm,
        AffineTransform correction) {
    private static final double EDGE = 9;
    private static final double GUTTER = 7;
    private static final double BAR_ROOM = 14;
    private static final double OFF = 1;
    private static final double MARK = 2.3;
    /** Blank margin that a roll's printer needs at the sides and after each label. */
    private static final double ROLL_SIDE = 1.5;

    private static final double ROLL_FEED = 3;
    private static final PrintColour MARKS = new PrintColour(110, 110, 110);

    /** @throws IllegalArgumentException if not one label has room on the paper */
    static Sheet of(PrintSettings request) {
        Sheet sheet = switch (request.placement().sheet()) {
            case SINGLE -> single(request);
            case A4, LETTER -> cut(request);
            case ROLL -> roll(request);
            case OWN -> own(request);
        };
        if (sheet.first >= sheet.boxes.size()) {
            throw Refusal.of("label.refused.place", "labels", sheet.boxes.size(), "place", sheet.first + 1);
        }
        return sheet;
    }

    private static Sheet single(PrintSettings request) {
        double edge = EDGE + request.finish().bleedMm();
        double w = request.format().widthMm();
        double h = request.format().heightMm();
        double width = Math.max(w, TestBar.LENGTH + 4) + 2 * edge;
        Box box = new Box((width - w) / 2, edge, w, h);
        return plain(request, width, edge + h + edge + BAR_ROOM, List.of(box), 0, false, true);
    }

    private static Sheet plain(
            PrintSettings request,
            double width,
            double height,
            List<Box> boxes,
            int first,
            boolean turned,
            boolean marked) {
        double bleed = marked ? request.finish().bleedMm() : 0;
        return new Sheet(width, height, List.copyOf(boxes), first, turned, marked, bleed, new AffineTransform());
    }

    private static Sheet cut(PrintSettings request) {
        SheetSize size = request.placement().sheet();
        Sheet upright = filled(request, size.widthMm(), size.heightMm());
        Sheet across = filled(request, size.heightMm(), size.widthMm());
        Sheet better = across.boxes.size() > upright.boxes.size() ? across : upright;
        if (better.boxes.isEmpty()) {
            throw Refusal.of(
                    "label.refused.paper",
                    "width",
                    NumberWords.decimals(request.format().widthMm(), 0),
                    "height",
                    NumberWords.decimals(request.format().heightMm(), 0),
                    "paper",
                    size);
        }
        return better;
    }

    private static Sheet filled(PrintSettings request, double pageWidth, double pageHeight) {
        double w = request.format().widthMm();
        double h = request.format().heightMm();
        double gutter = GUTTER + 2 * request.finish().bleedMm();
        double edge = EDGE + request.finish().bleedMm();
        int columns = (int) ((pageWidth - 2 * edge + gutter) / (w + gutter));
        int rows = (int) ((pageHeight - 2 * edge - BAR_ROOM + gutter) / (h + gutter));
        double left = (pageWidth - columns * w - (columns - 1) * gutter) / 2;
        double top = (pageHeight - BAR_ROOM - rows * h - (rows - 1) * gutter) / 2;
        List<Box> boxes = grid(columns, rows, left, top, w, h, gutter, gutter);
        return plain(request, pageWidth, pageHeight, boxes, request.placement().from() - 1, false, true);
    }

    private static List<Box> grid(
            int columns, int rows, double left, double top, double w, double h, double across, double down) {
        List<Box> boxes = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                boxes.add(new Box(left + column * (w + across), top + row * (h + down), w, h));
            }
        }
        return boxes;
    }

    /** Upright where its width allows, else on its side. */
    private static Sheet roll(PrintSettings request) {
        double roll = request.placement().rollMm();
        double w = request.format().widthMm();
        double h = request.format().heightMm();
        boolean turned = w + 2 * ROLL_SIDE > roll;
        double across = turned ? h : w;
        double along = turned ? w : h;
        if (across + 2 * ROLL_SIDE > roll) {
            throw Refusal.of(
                    "label.refused.roll-width",
                    "width",
                    NumberWords.decimals(w, 0),
                    "height",
                    NumberWords.decimals(h, 0),
                    "roll",
                    NumberWords.decimals(roll, 0),
                    "side",
                    NumberWords.decimals(ROLL_SIDE, 1));
        }
        Box box = new Box((roll - across) / 2, ROLL_FEED, across, along);
        return plain(request, roll, along + 2 * ROLL_FEED, List.of(box), 0, turned, false);
    }

    private static Sheet own(PrintSettings request) {
        LabelSheet own = request.placement().own();
        double height = own.roll() ? own.topMm() * 2 + own.labelHeightMm() : own.heightMm();
        List<Box> boxes = grid(
                own.columns(),
                own.rows(),
                own.leftMm(),
                own.topMm(),
                own.labelWidthMm(),
                own.labelHeightMm(),
                own.columnGapMm(),
                own.rowGapMm());
        return new Sheet(
                own.widthMm(),
                height,
                List.copyOf(boxes),
                request.placement().from() - 1,
                false,
                false,
                0,
                correction(own));
    }

    /** The transformation from the wanted to the sent position, from the page's upper left corner. */
    static AffineTransform correction(LabelSheet own) {
        return new AffineTransform(
                1 + own.acrossPerMille() / 1000,
                0,
                0,
                1 + own.downPerMille() / 1000,
                own.shiftRightMm(),
                own.shiftDownMm());
    }

    /** The transformation from a label drawn upright at the origin to its box on the page. */
    AffineTransform lying(Box box) {
        AffineTransform lie = new AffineTransform(correction);
        if (turned) {
            lie.translate(box.x() + box.width(), box.y());
            lie.rotate(Math.PI / 2);
        } else {
            lie.translate(box.x(), box.y());
        }
        return lie;
    }

    /** Whether a label drawn at its box's corner needs nothing else. */
    boolean straight() {
        return !turned && correction.isIdentity();
    }

    /** Cut marks of the boxes used, and the test bar. */
    void furnish(PdfCanvas ink, List<Box> used, boolean cutMarks) {
        if (!marked) {
            return;
        }
        double off = OFF + bleedMm;
        for (Box box : cutMarks ? used : List.<Box>of()) {
            for (double x : new double[] {box.x(), box.x() + box.width()}) {
                ink.line(x, box.y() - off, x, box.y() - off - MARK, 0.25, MARKS);
                ink.line(x, box.y() + box.height() + off, x, box.y() + box.height() + off + MARK, 0.25, MARKS);
            }
            for (double y : new double[] {box.y(), box.y() + box.height()}) {
                ink.line(box.x() - off, y, box.x() - off - MARK, y, 0.25, MARKS);
                ink.line(box.x() + box.width() + off, y, box.x() + box.width() + off + MARK, y, 0.25, MARKS);
            }
        }
        TestBar.draw(ink, widthMm / 2, heightMm - EDGE - TestBar.HEIGHT);
    }
}
