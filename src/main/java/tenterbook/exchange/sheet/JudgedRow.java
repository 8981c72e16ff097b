package tenterbook.exchange.sheet;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Written;

/**
 * A row with its verdict.
 *
 * @param row number as a spreadsheet shows it
 * @param id of the record; empty where the row has none that can be read
 * @param record what would be written; null where nothing would
 * @param version of the record that it is made from; 0 for a new one
 * @param why sentences of a refusal
 */
public record JudgedRow<T>(
        int row, Verdict verdict, String id, @Nullable T record, int version, List<Written> why) {
    boolean writes() {
        return record != null;
    }

    static <T> JudgedRow<T> still(int row, Verdict verdict, String id) {
        return new JudgedRow<>(row, verdict, id, null, 0, List.of());
    }

    static <T> JudgedRow<T> refused(int row, String id, List<Written> why) {
        return new JudgedRow<>(row, Verdict.REFUSED, id, null, 0, why);
    }
}
