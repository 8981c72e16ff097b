package tenterbook.archive;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Unreadable;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;

/** The pieces affected by a change of records: those that refer to them, directly or through a clamping. */
public final class Dependents {
    private Dependents() {}

    /** Numbers of the pieces, also of withdrawn ones that are themselves among {@code changed}. */
    public static Set<String> of(Ledger ledger, Collection<RecordKey> changed) {
        Set<String> pieces = new LinkedHashSet<>();
        Set<RecordKey> seen = new HashSet<>(changed);
        Deque<RecordKey> open = new ArrayDeque<>(seen);
        while (!open.isEmpty()) {
            RecordKey key = open.poll();
            if (is(key, Kinds.PIECE)) {
                pieces.add(key.id());
                continue;
            }
            if (is(key, Kinds.EXAMINATION)) {
                // Also of a withdrawn examination, which has no references any more.
                pieces.addAll(examined(ledger, key));
            }
            if (is(key, Kinds.CALIBRATION) && seen.add(Kinds.PHOTO.key(key.id()))) {
                // What its cards cover is no cloth, so the colours of the photograph's pieces depend on it.
                open.add(Kinds.PHOTO.key(key.id()));
            }
            for (RecordKey user : ledger.referencedBy(key)) {
                // A clamping that was copied from another does not depend on it afterwards.
                boolean copy = is(key, Kinds.CLAMPING) && is(user, Kinds.CLAMPING);
                if (!copy && !is(user, Kinds.AGREEMENT) && !is(user, Kinds.ISSUED_PAPER) && seen.add(user)) {
                    open.add(user);
                }
            }
        }
        return pieces;
    }

    private static List<String> examined(Ledger ledger, RecordKey examination) {
        List<Revision> history = ledger.history(examination);
        if (history.isEmpty()) {
            return List.of();
        }
        try {
            return List.of(ledger.saved(Kinds.EXAMINATION, history.get(history.size() - 1))
                    .record()
                    .piece()
                    .value());
        } catch (Unreadable e) {
            // An unreadable examination must not keep every later change out of the index.
            return ledger.references(examination).stream()
                    .filter(named -> is(named, Kinds.PIECE))
                    .map(RecordKey::id)
                    .toList();
        }
    }

    private static boolean is(RecordKey key, tenterbook.ledger.revision.Kind<?> kind) {
        return key.kind().equals(kind.name());
    }
}
