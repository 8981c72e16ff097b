package tenterbook.label.paper;

import java.util.ArrayList;
import java.util.List;
import tenterbook.label.LabelRequest;
import tenterbook.label.SheetSize;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Paper.Box;
import tenterbook.label.layout.Tone;

/**
 * Where labels lie on a page, and the marks to cut by. Marks stand 1 mm off the label, in the gutter, so that no ink stays on
 * a label cut a little wide.
 *
 * @param boxes of the labels, in millimetres from the page's upper left corner, in order of filling
 */
record Sheet(double widthMm, double heightMm, List<Box> boxes) {
    private static final double EDGE = 9;
    private static final double GUTTER = 7;
    private static final double BAR_ROOM = 14;
    private static final double OFF = 1;
    private static final double MARK = 2.3;
    private static final Tone MARKS = new Tone(110, 110, 110);

    /** @throws IllegalArgumentException if not one label has room on the paper */
    static Sheet of(LabelRequest request) {
        double w = request.widthMm();
        double h = request.heightMm();
        SheetSize size = request.sheet();
        if (size == SheetSize.SINGLE) {
            double width = Math.max(w, TestBar.LENGTH + 4) + 2 * EDGE;
            return new Sheet(width, EDGE + h + EDGE + BAR_ROOM, List.of(new Box((width - w) / 2, EDGE, w, h)));
        }
        Sheet upright = filled(size.widthMm(), size.heightMm(), w, h);
        Sheet across = filled(size.heightMm(), size.widthMm(), w, h);
        Sheet better = across.boxes.size() > upright.boxes.size() ? across : upright;
        if (better.boxes.isEmpty()) {
            throw new IllegalArgumentException(
                    "A label of %.0f by %.0f mm has no room on %s with its margins and test bar; take a page of its own"
                            .formatted(w, h, size));
        }
        return better;
    }

    private static Sheet filled(double pageWidth, double pageHeight, double w, double h) {
        int columns = (int) ((pageWidth - 2 * EDGE + GUTTER) / (w + GUTTER));
        int rows = (int) ((pageHeight - 2 * EDGE - BAR_ROOM + GUTTER) / (h + GUTTER));
        double left = (pageWidth - columns * w - (columns - 1) * GUTTER) / 2;
        double top = (pageHeight - BAR_ROOM - rows * h - (rows - 1) * GUTTER) / 2;
        List<Box> boxes = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                boxes.add(new Box(left + column * (w + GUTTER), top + row * (h + GUTTER), w, h));
            }
        }
        return new Sheet(pageWidth, pageHeight, List.copyOf(boxes));
    }

    /** Cut marks of the first {@code labels} boxes, and the test bar. */
    void furnish(Ink ink, int labels) {
        for (Box box : boxes.subList(0, labels)) {
            for (double x : new double[] {box.x(), box.x() + box.width()}) {
                ink.line(x, box.y() - OFF, x, box.y() - OFF - MARK, 0.25, MARKS);
                ink.line(x, box.y() + box.height() + OFF, x, box.y() + box.height() + OFF + MARK, 0.25, MARKS);
            }
            for (double y : new double[] {box.y(), box.y() + box.height()}) {
                ink.line(box.x() - OFF, y, box.x() - OFF - MARK, y, 0.25, MARKS);
                ink.line(box.x() + box.width() + OFF, y, box.x() + box.width() + OFF + MARK, y, 0.25, MARKS);
            }
        }
        TestBar.draw(ink, widthMm / 2, heightMm - EDGE - TestBar.HEIGHT);
    }
}
