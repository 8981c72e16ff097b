package tenterbook.labelling.paper;

import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelText;
import tenterbook.typeset.PdfCanvas;

/**
 * The tag tied to a piece: a hole at the head, maker and title, the number, what it is and how it was made, the piece's measured
 * colours, and at the foot a square code.
 */
final class HangTag implements LabelDrawing {
    private static final double MARGIN = 5.5;
    private static final double HOLE_DOWN = 6;
    private static final double HOLE_RADIUS = 2;
    private static final double HEAD = 11;
    private static final double CODE = 14;
    private static final double HEM = 4.5;
    private static final double SELVEDGE = 4.5;

    @Override
    public void draw(LabelText text, PdfCanvas ink) {
        double width = text.request().format().widthMm();
        Arrangement arrangement = text.request().format().arrangement();
        if (text.request().finish().holeMark()) {
            ink.circle(width / 2, HOLE_DOWN, HOLE_RADIUS, HAIRLINE, LabelDrawing.tone(HAIR, text));
        }
        ColourBand band = new ColourBand(text);
        if (arrangement == Arrangement.SELVEDGE && !band.empty()) {
            selvedge(text, ink, band);
        } else if (arrangement == Arrangement.HEM && !band.empty()) {
            hem(text, ink, band);
        } else {
            column(text, ink, band);
        }
    }

    private static void column(LabelText text, PdfCanvas ink, ColourBand band) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double measure = width - 2 * MARGIN;
        double foot = height - MARGIN - Math.max(CODE, band.leastHeight());
        TagText words = new TagText(text, ink, MARGIN, measure);
        TagText.Both both = words.fit(foot - 2 - HEAD - TagText.numberLine(), height * 0.42);
        double number = HEAD + both.headMm();
        double body = number + TagText.numberLine();
        words.column(both.head(), HEAD);
        words.numberAndPrice(number);
        words.rule(body - 1);
        words.column(both.body(), body);
        double bandWidth = measure - code(text, ink, width - MARGIN - CODE);
        if (!band.empty()) {
            band.upright(ink, MARGIN, foot, bandWidth, height - MARGIN - foot);
        }
    }

    /** The colours across the tag over the foot; they run off its sides where there is bleed. */
    private static void hem(LabelText text, PdfCanvas ink, ColourBand band) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double bleed = text.request().finish().bleedMm();
        double measure = width - 2 * MARGIN;
        TagText words = new TagText(text, ink, MARGIN, measure);
        double codeWide = code(text, ink, width - MARGIN - CODE);
        double foot = height - MARGIN - Math.max(CODE, band.key(ink, 0, 0, measure - codeWide, false));
        double strip = foot - 2.5 - HEM;
        TagText.Both both = words.fit(strip - 2 - HEAD - TagText.numberLine(), height * 0.42);
        double number = HEAD + both.headMm();
        double body = number + TagText.numberLine();
        words.column(both.head(), HEAD);
        words.numberAndPrice(number);
        words.rule(body - 1);
        words.column(both.body(), body);
        double off = bleed > 0 ? MARGIN + bleed : 0;
        band.across(ink, MARGIN - off, strip, measure + 2 * off, HEM);
        band.key(ink, MARGIN, foot, measure - codeWide, true);
    }

    /** The colours down the left side; they run off it where there is bleed. */
    private static void selvedge(LabelText text, PdfCanvas ink, ColourBand band) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double bleed = text.request().finish().bleedMm();
        double names;
        if (bleed > 0) {
            names = band.selvedge(
                    ink, -bleed, -bleed, SELVEDGE + 1 + bleed, height + 2 * bleed, MARGIN, height - MARGIN);
        } else {
            names = band.selvedge(ink, MARGIN - 1, HEAD, SELVEDGE, height - MARGIN - HEAD, HEAD, height - MARGIN);
        }
        double left = names + 2.2;
        TagText words = new TagText(text, ink, left, width - MARGIN - left);
        double foot = height - MARGIN - CODE;
        TagText.Both both = words.fit(foot - 2 - HEAD - TagText.numberLine(), height * 0.42);
        double number = HEAD + both.headMm();
        double body = number + TagText.numberLine();
        words.column(both.head(), HEAD);
        words.numberAndPrice(number);
        words.rule(body - 1);
        words.column(both.body(), body);
        code(text, ink, left);
    }

    /** The code at the foot, and the width it and its blank zone take; 0 where there is none. */
    private static double code(LabelText text, PdfCanvas ink, double x) {
        if (text.code().isEmpty()) {
            return 0;
        }
        SquareCode code = new SquareCode(text.code());
        code.draw(ink, x, text.request().format().heightMm() - MARGIN - CODE, CODE);
        return CODE + code.quietMm(CODE);
    }
}
