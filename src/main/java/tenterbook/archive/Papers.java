package tenterbook.archive;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Saved;
import tenterbook.ledger.Unreadable;
import tenterbook.ledger.revision.RecordKey;

/**
 * Issued papers, newest first. One that cannot be read hides neither the others nor what they tell of.
 *
 * @param unreadable names of those that are kept and cannot be read
 */
public record Papers(List<IssuedPaper> readable, List<String> unreadable) {
    private static final Comparator<IssuedPaper> NEWEST_FIRST = Comparator.comparing(IssuedPaper::issuedAt)
            .thenComparing(IssuedPaper::id)
            .reversed();

    public Papers {
        readable = readable.stream().sorted(NEWEST_FIRST).toList();
        unreadable = List.copyOf(unreadable);
    }

    /** Every paper that names a piece. */
    public static Papers of(Ledger ledger, String number) {
        return named(
                ledger,
                ledger.referencedBy(Kinds.PIECE.key(number)).stream()
                        .filter(key -> key.kind().equals(Kinds.ISSUED_PAPER.name()))
                        .map(RecordKey::id)
                        .toList());
    }

    /** Those of these names that are in use. */
    public static Papers named(Ledger ledger, List<String> ids) {
        List<IssuedPaper> readable = new ArrayList<>();
        List<String> unreadable = new ArrayList<>();
        for (String id : ids) {
            try {
                ledger.find(Kinds.ISSUED_PAPER, id).map(Saved::record).ifPresent(readable::add);
            } catch (Unreadable e) {
                unreadable.add(id);
            }
        }
        return new Papers(readable, unreadable);
    }
}
