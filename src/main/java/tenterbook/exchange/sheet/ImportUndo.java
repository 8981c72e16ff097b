package tenterbook.exchange.sheet;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Takes an import back: records that it began are withdrawn, those that it changed get the version before it. A record that was
 * changed since stays as it is and is listed, and so does one that others name. What the import wrote is found in the ledger itself,
 * by the note of its revisions.
 */
public final class ImportUndo {
    private static final String UNDO = "undo import ";
    private static final int READ = 500;
    private static final int BATCH = 200;

    private final Archive archive;
    private final String id;
    private int withdrawn;
    private int restored;
    private final List<Written> left = new ArrayList<>();

    private ImportUndo(Archive archive, String id) {
        this.archive = archive;
        this.id = id;
    }

    /**
     * @param withdrawn records that the import had begun
     * @param restored records that have their earlier version again
     * @param left a sentence for each record that stays
     */
    public record Report(int withdrawn, int restored, List<Written> left) {
        public Message summary() {
            return Message.of("import.undone", "withdrawn", withdrawn, "restored", restored, "left", left.size());
        }
    }

    /** The versions of one record that an import wrote. */
    private record Span(int first, int last) {}

    /**
     * @param after sequence before the import; 0 where not known
     * @throws tenterbook.words.Refusal where the ledger has nothing of this import
     */
    public static Report undo(Archive archive, String id, long after, Progress progress) {
        return new ImportUndo(archive, id).run(after, progress);
    }

    private Report run(long after, Progress progress) {
        Map<RecordKey, Span> spans = written(after);
        if (spans.isEmpty()) {
            throw tenterbook.words.Refusal.of("import.not-in-ledger", "id", id);
        }
        List<RecordKey> keys = new ArrayList<>(spans.keySet());
        Collections.reverse(keys);
        for (int i = 0; i < keys.size(); i += BATCH) {
            progress.orStop();
            progress.at(i, keys.size(), Message.of("import.undoing"));
            List<RecordKey> some = keys.subList(i, Math.min(keys.size(), i + BATCH));
            try {
                takeBack(some, spans);
            } catch (StillReferenced e) {
                some.forEach(key -> alone(key, spans));
            }
        }
        return new Report(withdrawn, restored, List.copyOf(left));
    }

    private void alone(RecordKey key, Map<RecordKey, Span> spans) {
        try {
            takeBack(List.of(key), spans);
        } catch (StillReferenced e) {
            left.add(e.explanation());
        }
    }

    private Map<RecordKey, Span> written(long after) {
        Map<RecordKey, Span> spans = new LinkedHashMap<>();
        List<Revision> some = archive.ledger().after(after, READ);
        while (!some.isEmpty()) {
            for (Revision each : some) {
                if (each.note().equals(SheetImport.NOTE + id)) {
                    spans.merge(
                            each.key(),
                            new Span(each.version(), each.version()),
                            (old, now) -> new Span(old.first(), now.last()));
                }
            }
            some = archive.ledger().after(some.get(some.size() - 1).sequence(), READ);
        }
        return spans;
    }

    /** What one transaction does; counted when it is through. */
    private static final class Counted {
        private int withdrawn;
        private int restored;
        private final List<Written> left = new ArrayList<>();
    }

    private void takeBack(List<RecordKey> keys, Map<RecordKey, Span> spans) {
        Counted counted = new Counted();
        Ledger ledger = archive.ledger();
        Map<RecordKey, List<Revision>> histories = new LinkedHashMap<>();
        keys.forEach(key -> histories.put(key, ledger.history(key)));
        ledger.write(archive.author(), act -> {
            histories.forEach((key, history) -> Kinds.ALL.stream()
                    .filter(kind -> kind.name().equals(key.kind()) && !history.isEmpty())
                    .findFirst()
                    .ifPresent(kind -> takeBack(act, kind, history, spans.get(key), counted)));
            return null;
        });
        withdrawn += counted.withdrawn;
        restored += counted.restored;
        left.addAll(counted.left);
    }

    private <T> void takeBack(LedgerTransaction act, Kind<T> kind, List<Revision> history, Span span, Counted counted) {
        Revision newest = history.get(history.size() - 1);
        if (newest.version() != span.last()) {
            if (!newest.note().equals(UNDO + id)) {
                counted.left.add(Message.of(
                        "import.changed-since",
                        "kind",
                        kind.called(),
                        "id",
                        newest.key().id()));
            }
            return;
        }
        Optional<Revision> before = history.stream()
                .filter(each -> each.version() == span.first() - 1 && !each.withdrawn())
                .findFirst();
        if (before.isEmpty()) {
            act.withdraw(kind, newest.key().id(), newest.version(), UNDO + id);
            counted.withdrawn++;
        } else {
            T record = archive.ledger().saved(kind, before.get()).record();
            act.save(kind, record, before.get().json(), newest.version(), UNDO + id);
            counted.restored++;
        }
    }
}
