package tenterbook.labelling.paper;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.util.List;
import tenterbook.archive.record.LabelSheet;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PdfDocument;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;
import tenterbook.typeset.UnsupportedCharacter;
import tenterbook.words.Message;

/**
 * A page to print on plain paper and measure: the outline of every label, a cross at a known place, and a bar across and one
 * down. Printed with the correction now kept, so that printing it again shows whether it was right.
 */
public final class TestPage {
    /** Length of each bar, in millimetres. */
    public static final double BAR = 50;

    private static final double ROLL_LENGTH = 90;
    private static final double LEAST_LENGTH = 60;
    private static final TextStyle WORDS =
            TextStyle.of(Typeface.TEXT, 8, 10.5, 5).running();
    private static final PrintColour OUTLINE = new PrintColour(150, 150, 150);

    private TestPage() {}

    /** How far the cross should stand from the paper's left and upper edges, in millimetres. */
    public static double crossMm(LabelSheet sheet) {
        return sheet.widthMm() < 80 ? 5 : 20;
    }

    /** Writes the page, PDF/A-2b. */
    public static void print(LabelSheet sheet, OutputStream out, Clock clock) throws IOException {
        double height = sheet.roll()
                ? Math.max(ROLL_LENGTH, 2 * sheet.topMm() + sheet.labelHeightMm())
                : Math.max(sheet.heightMm(), LEAST_LENGTH);
        AffineTransform correction = Sheet.correction(sheet);
        try (PdfDocument paper = new PdfDocument(clock)) {
            paper.page(sheet.widthMm(), height, null, ink -> ink.through(correction, c -> draw(sheet, c, height)));
            paper.save(
                    Message.of("label.test-page.title", "sheet", sheet.name()).inEnglish(), "en-GB", out);
        }
    }

    private static void draw(LabelSheet sheet, PdfCanvas ink, double height) {
        for (int row = 0; row < sheet.rows(); row++) {
            for (int column = 0; column < sheet.columns(); column++) {
                outline(
                        ink,
                        sheet.leftMm() + column * (sheet.labelWidthMm() + sheet.columnGapMm()),
                        sheet.topMm() + row * (sheet.labelHeightMm() + sheet.rowGapMm()),
                        sheet.labelWidthMm(),
                        sheet.labelHeightMm());
            }
        }
        double cross = crossMm(sheet);
        ink.line(cross - 4, cross, cross + 4, cross, 0.3, PrintColour.BLACK);
        ink.line(cross, cross - 4, cross, cross + 4, 0.3, PrintColour.BLACK);
        // On a narrow roll the bar is as long as the paper allows; its ticks show its length.
        double bar = Math.min(BAR, Math.floor((sheet.widthMm() - cross - 2) / 10) * 10);
        double down = Math.min(BAR, Math.floor((height - cross - 8) / 10) * 10);
        scale(ink, cross, cross + 6, bar, true);
        scale(ink, cross + 6, cross + 8, down, false);
        words(sheet, ink, height, bar, down);
    }

    /** All words, or as many as the paper has room for; on a narrow roll below the bars. */
    private static void words(LabelSheet sheet, PdfCanvas ink, double height, double bar, double down) {
        double cross = crossMm(sheet);
        String full = Message.of(
                        "label.test-page.full",
                        "cross",
                        NumberWords.decimals(cross, 1),
                        "across",
                        NumberWords.decimals(bar, 0),
                        "down",
                        NumberWords.decimals(down, 0),
                        "right",
                        NumberWords.decimals(sheet.shiftRightMm(), 2),
                        "lower",
                        NumberWords.decimals(sheet.shiftDownMm(), 2),
                        "acrossPerMille",
                        NumberWords.decimals(sheet.acrossPerMille(), 1),
                        "downPerMille",
                        NumberWords.decimals(sheet.downPerMille(), 1))
                .inEnglish();
        String brief = Message.of(
                        "label.test-page.brief",
                        "cross",
                        NumberWords.decimals(cross, 1),
                        "across",
                        NumberWords.decimals(bar, 0),
                        "down",
                        NumberWords.decimals(down, 0))
                .inEnglish();
        double beside = Math.min(110, sheet.widthMm() - cross - 13);
        double below = cross + 10 + down;
        // The page that offers this print says the same, where the paper has no room for words at all.
        boolean complete = set(ink, sheet.name() + ". " + full, cross + 11, cross + 10, beside, height - cross - 12)
                || set(ink, full, cross + 11, cross + 10, beside, height - cross - 12)
                || set(ink, brief, 2, below, sheet.widthMm() - 4, height - below - 2);
    }

    private static boolean set(PdfCanvas ink, String words, double x, double y, double width, double height) {
        try {
            TextColumn.SetColumn set = new TextColumn(Message.of("label.test-page.words"))
                    .add(words, WORDS, 0)
                    .set(ink.setter(), width, height);
            ink.column(set, x, y, PrintColour.BLACK);
            return true;
        } catch (DoesNotFit | UnsupportedCharacter e) {
            return false;
        }
    }

    private static void outline(PdfCanvas ink, double x, double y, double width, double height) {
        for (double[] side : List.of(
                new double[] {x, y, x + width, y},
                new double[] {x, y + height, x + width, y + height},
                new double[] {x, y, x, y + height},
                new double[] {x + width, y, x + width, y + height})) {
            ink.line(side[0], side[1], side[2], side[3], 0.25, OUTLINE);
        }
    }

    private static void scale(PdfCanvas ink, double x, double y, double length, boolean across) {
        ink.line(x, y, across ? x + length : x, across ? y : y + length, 0.4, PrintColour.BLACK);
        for (int mm = 0; mm <= length; mm += 5) {
            double tick = mm % 10 == 0 ? 2 : 1.2;
            if (across) {
                ink.line(x + mm, y - tick, x + mm, y, 0.25, PrintColour.BLACK);
            } else {
                ink.line(x - tick, y + mm, x, y + mm, 0.25, PrintColour.BLACK);
            }
        }
    }
}
