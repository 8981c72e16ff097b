package tenterbook.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.NamedParts;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/** Compares the stored references with those computed from the records. */
final class ReferenceCheck {
    private final Ledger ledger;
    private final List<Finding> findings = new ArrayList<>();
    private final Map<RecordKey, Boolean> inUse = new HashMap<>();
    private final Map<RecordKey, Set<String>> parts = new HashMap<>();

    ReferenceCheck(Ledger ledger) {
        this.ledger = ledger;
    }

    List<Finding> run(Progress progress) {
        for (Kind<?> kind : Kinds.ALL) {
            List<String> ids = ledger.allIdsEverUsed(kind);
            long done = 0;
            for (String id : ids) {
                progress.at(++done, ids.size(), Message.of("exchange.following", "kind", kind.called()));
                progress.orStop();
                check(kind, id);
            }
        }
        return findings;
    }

    private <T> void check(Kind<T> kind, String id) {
        RecordKey key = kind.key(id);
        try {
            Optional<Saved<T>> saved = ledger.find(kind, id);
            Set<RecordKey> due = new HashSet<>();
            if (saved.isPresent()) {
                T record = saved.get().record();
                due.addAll(kind.references().apply(record));
                due.remove(key);
                kind.parts().references().apply(record).forEach(use -> partIn(key, use));
                String own = kind.id().apply(record);
                if (!own.equals(id)) {
                    findings.add(new Finding(key.toString(), Message.of("exchange.own-name", "found", own)));
                }
            }
            compare(key, due);
        } catch (ArchiveProblem e) {
            findings.add(new Finding(key.toString(), e.explanation()));
        } catch (RuntimeException e) {
            findings.add(new Finding(key.toString(), Message.of("exchange.record-wrong", "why", e.toString())));
        }
    }

    private void partIn(RecordKey key, NamedParts.Use use) {
        if (!parts.computeIfAbsent(use.record(), this::partsOf).contains(use.part())) {
            findings.add(new Finding(
                    key.toString(), Message.of("exchange.part-missing", "part", use.part(), "record", use.record())));
        }
    }

    private Set<String> partsOf(RecordKey key) {
        return Kinds.ALL.stream()
                .filter(kind -> kind.name().equals(key.kind()))
                .findFirst()
                .map(kind -> partsOf(kind, key.id()))
                .orElse(Set.of());
    }

    private <T> Set<String> partsOf(Kind<T> kind, String id) {
        return ledger.find(kind, id)
                .map(saved -> Set.copyOf(kind.parts().own().apply(saved.record())))
                .orElse(Set.of());
    }

    private void compare(RecordKey key, Set<RecordKey> due) {
        Set<RecordKey> kept = new HashSet<>(ledger.references(key));
        for (RecordKey target : due) {
            if (!inUse.computeIfAbsent(target, this::inUse)) {
                findings.add(new Finding(key.toString(), Message.of("exchange.names-missing", "record", target)));
            }
            if (!kept.remove(target)) {
                findings.add(new Finding(key.toString(), Message.of("exchange.reference-lacking", "record", target)));
            }
        }
        kept.forEach(target ->
                findings.add(new Finding(key.toString(), Message.of("exchange.reference-too-much", "record", target))));
    }

    private boolean inUse(RecordKey key) {
        try {
            List<Revision> history = ledger.history(key);
            return !history.isEmpty() && !history.get(history.size() - 1).withdrawn();
        } catch (RuntimeException e) {
            // It is there; that a revision of it cannot be read is a finding of its own.
            return true;
        }
    }
}
