package tenterbook.exchange.sheet.file;

import java.util.List;

/**
 * One row of a sheet as texts.
 *
 * @param number as a spreadsheet shows it, from 1
 * @param cells from the first column on; cells may be missing at the end
 */
public record SheetRow(int number, List<String> cells) {
    /** Most columns of a sheet that are read. */
    static final int MOST_COLUMNS = 256;

    /** The text of a cell; empty where there is none. */
    public String cell(int column) {
        return column < cells.size() ? cells.get(column) : "";
    }

    public boolean blank() {
        return cells.stream().allMatch(String::isBlank);
    }

    public long filled() {
        return cells.stream().filter(cell -> !cell.isBlank()).count();
    }

    /** Takes the rows of a sheet one after another. */
    @FunctionalInterface
    public interface Sink {
        /** @return whether further rows are wanted */
        boolean take(SheetRow row);
    }
}
