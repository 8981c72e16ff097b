package tenterbook.archive.record;

import com.fasterxml.jackson.annotation.JsonProperty;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A sheet or roll of labels, and the correction of the printer's offset and scale.
 *
 * <p>All positions are those on the paper when it is held upright, from its upper left corner. The correction is added to what
 * the printer is sent: where the test page's cross stands 0.6 mm too far to the right, {@code shiftRightMm} is -0.6; where its
 * 50 mm bar measures 49.8, the scale is 4 ‰ (50 / 49.8 - 1).
 *
 * @param name chosen by the maker; 1 to 60 characters
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
            throw Refusal.of("sheet.sheet-name", "found", name);
        }
        within(name, "sheet.measure.paper-width", widthMm, 20, 350);
        if (heightMm != 0) {
            within(name, "sheet.measure.paper-height", heightMm, 20, 500);
        }
        within(name, "sheet.measure.columns", columns, 1, 40);
        within(name, "sheet.measure.rows", rows, 1, heightMm == 0 ? 1 : 60);
        within(name, "sheet.measure.label-width", labelWidthMm, 15, 300);
        within(name, "sheet.measure.label-height", labelHeightMm, 10, 400);
        within(name, "sheet.measure.left", leftMm, 0, 100);
        within(name, "sheet.measure.top", topMm, 0, 100);
        within(name, "sheet.measure.column-gap", columnGapMm, 0, 100);
        within(name, "sheet.measure.row-gap", rowGapMm, 0, 100);
        within(name, "sheet.measure.shift-right", shiftRightMm, -10, 10);
        within(name, "sheet.measure.shift-down", shiftDownMm, -10, 10);
        within(name, "sheet.measure.scale-across", acrossPerMille, -30, 30);
        within(name, "sheet.measure.scale-down", downPerMille, -30, 30);
        double across = leftMm + columns * labelWidthMm + (columns - 1) * columnGapMm;
        double down = topMm + rows * labelHeightMm + (rows - 1) * rowGapMm;
        if (across > widthMm + SLACK || heightMm != 0 && down > heightMm + SLACK) {
            throw Refusal.of(
                    "sheet.sheet-too-large",
                    "sheet",
                    name,
                    "across",
                    NumberWords.decimals(across, 1),
                    "down",
                    NumberWords.decimals(down, 1),
                    "width",
                    NumberWords.decimals(widthMm, 1),
                    "height",
                    NumberWords.decimals(heightMm, 1));
        }
    }

    private static void within(String sheet, String what, double found, double least, double most) {
        if (!(found >= least && found <= most)) {
            throw Refusal.of(
                    "sheet.sheet-measure",
                    "what",
                    Message.of(what),
                    "sheet",
                    sheet,
                    "least",
                    NumberWords.plain(least),
                    "most",
                    NumberWords.plain(most),
                    "found",
                    NumberWords.plain(found));
        }
    }

    public boolean roll() {
        return heightMm == 0;
    }

    /** How many labels one sheet holds. */
    public int places() {
        return columns * rows;
    }
}
