package tenterbook.exchange.sheet;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.exchange.sheet.file.SheetRow;
import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/**
 * The row of a sheet that names its columns, and the first rows below it.
 *
 * @param headings stripped; empty for a column without a name
 * @param row number of the row that has them; the first with two filled cells, or the first filled one
 */
public record SheetHead(List<String> headings, int row, List<SheetRow> sample) {
    private static final int SAMPLE = 200;

    /** A title above the table has one cell; it is no longer than this. */
    private static final int TITLE_ROWS = 10;

    /** @throws Refusal where the sheet has no rows */
    public static SheetHead of(SheetFile file, SheetKind kind) {
        List<SheetRow> first = new ArrayList<>();
        file.rows(kind.sheetNames(), row -> {
            if (!row.blank()) {
                first.add(row);
            }
            return first.size() < SAMPLE + TITLE_ROWS;
        });
        if (first.isEmpty()) {
            throw Refusal.of("import.no-rows");
        }
        int at = 0;
        while (at < Math.min(first.size(), TITLE_ROWS) && first.get(at).filled() < 2) {
            at++;
        }
        at = at == Math.min(first.size(), TITLE_ROWS) ? 0 : at;
        List<String> headings =
                first.get(at).cells().stream().map(String::strip).toList();
        return new SheetHead(headings, first.get(at).number(), List.copyOf(first.subList(at + 1, first.size())));
    }

    /** What a choice of columns is remembered by: the kind and the names of all columns, whatever the rows. */
    public Digest digest(SheetKind kind) {
        return Digest.of((kind + "\n" + String.join("\n", headings)).getBytes(StandardCharsets.UTF_8));
    }
}
