package tenterbook.ledger;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.words.Message;

/** Compares the tables derived from the revisions with the revisions. */
final class CurrentCheck {
    private final Handle handle;
    private final ChainCheck chain;
    private final List<Finding> findings;

    CurrentCheck(Handle handle, ChainCheck chain, List<Finding> findings) {
        this.handle = handle;
        this.chain = chain;
        this.findings = findings;
    }

    void run() {
        Map<RecordKey, Long> listed = new HashMap<>();
        handle.createQuery("SELECT kind, id, sequence FROM current")
                .map((row, context) -> Map.entry(new RecordKey(row.getString(1), row.getString(2)), row.getLong(3)))
                .forEach(row -> listed.put(chain.stored(row.getKey()), row.getValue()));
        chain.newest().forEach((key, sequence) -> {
            Long found = listed.remove(key);
            if (!sequence.equals(found)) {
                findings.add(new Finding(
                        chain.own(key).toString(),
                        Message.of("ledger.check.current", "sequence", sequence, "found", String.valueOf(found))));
            }
        });
        listed.keySet()
                .forEach(key ->
                        findings.add(new Finding(chain.own(key).toString(), Message.of("ledger.check.current-alone"))));
        texts();
    }

    /** Checks the merged text that is stored for each newest revision with private fields, and for no other. */
    private void texts() {
        handle.createQuery("""
                        SELECT coalesce(c.sequence, t.sequence), r.record, p.fields, t.record, c.sequence
                        FROM current AS c
                        JOIN revisions AS r ON r.sequence = c.sequence
                        JOIN private_parts AS p ON p.sequence = c.sequence AND p.fields <> '{}'
                        FULL JOIN current_texts AS t ON t.sequence = c.sequence
                        """)
                .map((row, context) -> {
                    String text = row.getString(4);
                    boolean newest = row.getString(5) != null;
                    if (!newest || !merges(new TwoParts(row.getString(2), row.getString(3)), text)) {
                        findings.add(new Finding(
                                Message.of("ledger.check.revision-alone", "sequence", row.getLong(1)),
                                Message.of("ledger.check.current-text")));
                    }
                    return row.getLong(1);
                })
                .list();
    }

    /** Whether the parts give this text. Parts that do not belong together give none, which must not end the check. */
    private static boolean merges(TwoParts parts, String text) {
        try {
            return parts.merged().equals(text);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
