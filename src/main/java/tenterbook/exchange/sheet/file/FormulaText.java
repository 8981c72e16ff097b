package tenterbook.exchange.sheet.file;

import java.util.regex.Pattern;

/**
 * Texts in CSV that a spreadsheet would calculate: an apostrophe stands before one that begins as a formula does, and is taken away
 * again when the sheet is read. In xlsx and ods a text is marked as one, so nothing is needed there.
 */
public final class FormulaText {
    private static final Pattern FORMULA = Pattern.compile("(?s)'*[\\s\\p{Z}]*[=+\\-@].*");
    private static final Pattern MARKED = Pattern.compile("(?s)'+[\\s\\p{Z}]*[=+\\-@].*");

    private FormulaText() {}

    /** For a cell of CSV. */
    public static String written(String text) {
        return FORMULA.matcher(text).matches() ? "'" + text : text;
    }

    /** The text of a cell of CSV. */
    static String read(String cell) {
        return MARKED.matcher(cell).matches() ? cell.substring(1) : cell;
    }
}
