package tenterbook.exchange.sheet;

import tenterbook.archive.field.Written;

/**
 * A field that a sheet may have as a column.
 *
 * @param path dotted name as forms have it, as in {@code content.0.fibre}
 * @param value how its text is read and written
 * @param personal whether it is about a person or money
 * @param label as on a form
 */
public record SheetColumn(String path, Written<?> value, boolean personal, tenterbook.words.Written label) {
    /** Whether its cells name a person. */
    public boolean person() {
        return path.equals("holder") || path.equals("party");
    }
}
