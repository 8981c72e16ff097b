package tenterbook.documents.layout;

import tenterbook.documents.Block;
import tenterbook.documents.DocumentTheme;
import tenterbook.documents.PageSize;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/**
 * Margins, columns and type of one dress on one page. Millimetres; type in points.
 *
 * @param sectionsWhole whether what stands under a heading of level 2 stays on one page where a page can hold it
 * @param wholeHeight the tallest a photograph over the whole measure may be, as a part of the page's height
 * @param labels width of the narrow column for names of facts; 0 where there is none
 * @param gutter between the two columns
 * @param air how much of the usual space between blocks and of the usual height of photographs there is; 1 is all, and
 *     {@link #LEAST_AIR} the least that looks well
 * @param first where the first page begins, and {@code top} the others
 */
record PageStyle(
        boolean sectionsWhole,
        double air,
        double pageWidth,
        double pageHeight,
        double wholeHeight,
        double left,
        double right,
        double first,
        double top,
        double bottom,
        double labels,
        double gutter,
        TextStyle overline,
        TextStyle title,
        TextStyle h1,
        TextStyle h2,
        TextStyle h3,
        TextStyle body,
        TextStyle value,
        TextStyle label,
        TextStyle cell,
        TextStyle small,
        TextStyle foot) {
    static final PrintColour INK = new PrintColour(28, 26, 24);
    static final PrintColour QUIET = new PrintColour(92, 86, 80);
    static final PrintColour HAIR = new PrintColour(178, 171, 162);
    /** For what must not be overlooked; 7 : 1 on white. */
    static final PrintColour HEED = new PrintColour(134, 44, 30);

    static final double HAIRLINE = 0.35;

    /** Photographs of 37 mm still show what they show, and blocks still stand apart: judged by eye. */
    static final double LEAST_AIR = 0.55;

    /** @param scale of all type */
    static PageStyle of(DocumentTheme dress, PageSize page, double scale) {
        return of(dress, page, scale, 1);
    }

    /**
     * @param scale of all type
     * @param air {@link #LEAST_AIR} to 1
     */
    static PageStyle of(DocumentTheme dress, PageSize page, double scale, double air) {
        double w = page.widthMm();
        double h = page.heightMm();
        return switch (dress) {
            case SHEET -> {
                double s = w < 180 ? 0.9 * scale : scale;
                double side = w < 180 ? 14 : 22;
                yield made(
                        dress, air, w, h, side, side - 2, side - 3, 24, 22, w < 180 ? 26 : 38, 5, s, 26, 16, 10.2, 9.6);
            }
            case BENCH -> made(dress, air, w, h, 18, 16, 15, 22, 20, 38, 5, scale, 28, 22, 14.5, 14.5);
            case WALL -> {
                double s = scale * (w < 180 ? 0.8 : 1);
                double side = w < 180 ? 17 : 27;
                yield made(
                        dress, air, w, h, side, side, side, side, side - 3, 0, 0, s, Math.max(18 / s, 34), 20, 16, 15);
            }
            case CARD -> made(dress, air, w, h, 8, 8, 8, 13, 11, 19, 3, scale, 15, 11, 8, 7.8);
        };
    }

    private static PageStyle made(
            DocumentTheme dress,
            double air,
            double w,
            double h,
            double left,
            double right,
            double first,
            double top,
            double bottom,
            double labels,
            double gutter,
            double s,
            double title,
            double h1,
            double body,
            double value) {
        double small = value * 0.86;
        return new PageStyle(
                dress == DocumentTheme.BENCH,
                air,
                w,
                h,
                dress == DocumentTheme.CARD ? 0.36 : 0.42,
                left,
                right,
                first,
                top,
                bottom,
                labels,
                gutter,
                fixed(Typeface.SMALL_CAPS, value * 1.08 * s, 1.3).tracked(0.05),
                fixed(Typeface.TITLE, title * s, 1.14).even(),
                fixed(Typeface.TITLE, h1 * s, 1.22).even(),
                fixed(Typeface.SMALL_CAPS, value * 1.12 * s, 1.3).tracked(0.04),
                dress == DocumentTheme.WALL
                        ? fixed(Typeface.TITLE_ITALIC, h1 * s, 1.2)
                        : fixed(Typeface.TEXT_MEDIUM, value * 1.04 * s, 1.32),
                fixed(Typeface.TITLE, body * s, 1.4),
                fixed(Typeface.TEXT, value * s, 1.36),
                fixed(Typeface.TEXT, value * 0.94 * s, 1.36 / 0.94),
                fixed(Typeface.TEXT, value * 0.93 * s, 1.32),
                fixed(Typeface.TEXT, small * s, 1.32),
                fixed(Typeface.TEXT, Math.min(small, 8.4) * s, 1.3));
    }

    private static TextStyle fixed(Typeface face, double size, double leading) {
        return TextStyle.of(face, size, size * leading, size);
    }

    /** Of all text, both columns. */
    double measure() {
        return pageWidth - left - right;
    }

    /** The left side of the wide column. */
    double main() {
        return left + labels + gutter;
    }

    double mainMeasure() {
        return measure() - labels - gutter;
    }

    /** The lowest that text may reach. */
    double floor() {
        return pageHeight - bottom;
    }

    /** A usual space between blocks, as a part of the leading of text. It gives way half as far as photographs do. */
    double space(double parts) {
        return Mm.of(value.leading()) * parts * (1 + air) / 2;
    }

    /** The tallest a photograph may be. A large one and one with marks keep their size: they are there to be looked at closely. */
    double tallest(Block.Extent extent, boolean marked) {
        if (extent == Block.Extent.LARGE) {
            return (floor() - first) / 2;
        }
        double part = switch (extent) {
            case LARGE, WHOLE -> wholeHeight;
            case HALF -> 0.225;
            case THIRD -> 0.2;
        };
        return pageHeight * part * (marked ? 1 : air);
    }
}
