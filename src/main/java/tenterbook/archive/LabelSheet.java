package tenterbook.archive;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * A sheet or roll of labels as the maker bought it, and how the printer strays on it.
 *
 * <p>All positions are those on the paper when it is held upright, from its upper left corner. The correction is added to what
 * the printer is sent: where the test page's cross stands 0.6 mm too far to the right, {@code shiftRightMm} is -0.6; where its
 * 50 mm bar measures 49.8, the scale is 4 ‰ (50 / 49.8 - 1).
 *
 * @param name as the maker calls it; 1 to 60 characters
 * @param widthMm of the paper, 20 to 350
 * @param heightMm of the paper, 20 to 500; 0 for a roll, which is cut after every row
 * @param columns 1 to 40
 * @param rows 1 to 60; 1 on a roll
 * @param labelWidthMm of one label
 * @param labelHeightMm of one label
 * @param leftMm from the paper's left edge to the first label
 * @param topMm from the paper's upper edge to the first label; on a roll also what follows the label
 * @param columnGapMm between two columns
 * @param rowGapMm between two rows
 * @param shiftRightMm correction, -10 to 10
 * @param shiftDownMm correction, -10 to 10
 * @param acrossPerMille correction of widths, -30 to 30
 * @param downPerMille correction of heights, -30 to 30
 */
public record LabelSheet(
        @JsonProperty("name") String name,
        @JsonProperty("widthMm") double widthMm,
        @JsonProperty("heightMm") double heightMm,
        @JsonProperty("columns") int columns,
        @JsonProperty("rows") int rows,
        @JsonProperty("labelWidthMm") double labelWidthMm,
        @JsonProperty("labelHeightMm") double labelHeightMm,
        @JsonProperty("leftMm") double leftMm,
        @JsonProperty("topMm") double topMm,
        @JsonProperty("columnGapMm") double columnGapMm,
        @JsonProperty("rowGapMm") double rowGapMm,
        @JsonProperty("shiftRightMm") double shiftRightMm,
        @JsonProperty("shiftDownMm") double shiftDownMm,
        @JsonProperty("acrossPerMille") double acrossPerMille,
        @JsonProperty("downPerMille") double downPerMille) {
    private static final double SLACK = 0.05;

    /** @throws IllegalArgumentException naming the measure, what was expected and what was found */
    public LabelSheet {
        name = name == null ? "" : name.strip();
        if (name.isEmpty() || name.length() > 60 || !name.equals(name.replaceAll("[\\p{Cntrl}/?#%]", ""))) {
            throw new IllegalArgumentException(
                    "A sheet is kept by a name of 1 to 60 characters without / ? # %%; found “%s”.".formatted(name));
        }
        within(name, "width of the paper", widthMm, 20, 350);
        if (heightMm != 0) {
            within(name, "height of the paper (0 for a roll)", heightMm, 20, 500);
        }
        within(name, "number of columns", columns, 1, 40);
        within(name, "number of rows", rows, 1, heightMm == 0 ? 1 : 60);
        within(name, "width of a label", labelWidthMm, 15, 300);
        within(name, "height of a label", labelHeightMm, 10, 400);
        within(name, "left margin", leftMm, 0, 100);
        within(name, "upper margin", topMm, 0, 100);
        within(name, "gap between columns", columnGapMm, 0, 100);
        within(name, "gap between rows", rowGapMm, 0, 100);
        within(name, "shift to the right", shiftRightMm, -10, 10);
        within(name, "shift down", shiftDownMm, -10, 10);
        within(name, "scale across", acrossPerMille, -30, 30);
        within(name, "scale down", downPerMille, -30, 30);
        double across = leftMm + columns * labelWidthMm + (columns - 1) * columnGapMm;
        double down = topMm + rows * labelHeightMm + (rows - 1) * rowGapMm;
        if (across > widthMm + SLACK || heightMm != 0 && down > heightMm + SLACK) {
            throw new IllegalArgumentException(
                    "The labels of “%s” reach %.1f mm across and %.1f mm down, but the paper has %.1f by %.1f mm. Measure the margins, labels and gaps again."
                            .formatted(name, across, down, widthMm, heightMm));
        }
    }

    private static void within(String sheet, String what, double found, double least, double most) {
        if (!(found >= least && found <= most)) {
            throw new IllegalArgumentException("The %s of “%s” should be %s to %s; found %s."
                    .formatted(what, sheet, plain(least), plain(most), plain(found)));
        }
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    public boolean roll() {
        return heightMm == 0;
    }

    /** How many labels one sheet holds. */
    public int places() {
        return columns * rows;
    }
}
