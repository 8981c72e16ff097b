package tenterbook.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * What the erasures in the ledger name, from their own revisions.
 *
 * @param named by sequence, the sequences of the erasures that name it
 * @param persons the keys, by handle, of those who were erased
 * @param carriedOut contents of the table ‘erased’
 * @param last by sequence, the newest erasure that names it
 * @param salts contents of the table ‘remains’
 */
record Erasures(
        Map<Long, Set<Long>> named,
        Set<RecordKey> persons,
        Map<Long, Set<Long>> carriedOut,
        Map<Long, Erasure> last,
        Map<Long, String> salts) {
    static Erasures read(Handle handle) {
        Map<Long, Set<Long>> named = new TreeMap<>();
        Set<RecordKey> persons = new java.util.HashSet<>();
        Map<Long, Erasure> last = new TreeMap<>();
        handle.createQuery("SELECT sequence, record FROM revisions WHERE kind = :kind ORDER BY sequence")
                .bind("kind", Erasure.KIND.name())
                .map((row, context) -> Map.entry(row.getLong(1), row.getString(2)))
                .forEach(row -> read(row.getValue()).ifPresent(erasure -> {
                    persons.add(new RecordKey(erasure.kind(), erasure.handle()));
                    erasure.sequences().forEach(sequence -> {
                        add(named, sequence, row.getKey());
                        last.put(sequence, erasure);
                    });
                }));
        Map<Long, Set<Long>> carriedOut = new TreeMap<>();
        handle.createQuery("SELECT sequence, erasure FROM erased WHERE done = 1")
                .map((row, context) -> Map.entry(row.getLong(1), row.getLong(2)))
                .forEach(row -> add(carriedOut, row.getKey(), row.getValue()));
        Map<Long, String> salts = new TreeMap<>();
        handle.createQuery("SELECT sequence, salt FROM remains")
                .map((row, context) -> Map.entry(row.getLong(1), row.getString(2)))
                .forEach(row -> salts.put(row.getKey(), row.getValue()));
        return new Erasures(named, persons, carriedOut, last, salts);
    }

    /** Empty where damaged: it then accounts for nothing, and its own digest shows that it was changed. */
    private static Optional<Erasure> read(String record) {
        try {
            return Optional.of(Erasure.KIND.codec().fromText(record));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static void add(Map<Long, Set<Long>> map, long sequence, long erasure) {
        map.computeIfAbsent(sequence, any -> new TreeSet<>()).add(erasure);
    }

    boolean name(long sequence) {
        return named.containsKey(sequence);
    }

    /**
     * Whether a private part is as left by the newest erasure that names its revision; also true where that erasure does not
     * commit to it.
     *
     * @param kept null where there is none
     */
    boolean left(long sequence, @Nullable PrivatePart kept) {
        Erasure erasure = last.get(sequence);
        if (erasure == null || erasure.remains() == null) {
            return true;
        }
        Digest found = kept == null
                ? null
                : kept.salted(salts.getOrDefault(sequence, "")).digest();
        return Objects.equals(found, erasure.remains().get(sequence));
    }

    /** Sequences named by erasures of older programs, which do not commit to what they left. */
    List<Long> notCheckable() {
        return last.entrySet().stream()
                .filter(entry -> entry.getValue().remains() == null)
                .map(Map.Entry::getKey)
                .toList();
    }

    List<Finding> disagreements() {
        List<Finding> findings = new ArrayList<>();
        Set<Long> all = new TreeSet<>(named.keySet());
        all.addAll(carriedOut.keySet());
        for (long sequence : all) {
            Set<Long> due = named.getOrDefault(sequence, Set.of());
            Set<Long> found = carriedOut.getOrDefault(sequence, Set.of());
            if (!due.equals(found)) {
                findings.add(new Finding(
                        Message.of("ledger.check.revision-alone", "sequence", sequence),
                        Message.of("ledger.check.erased-otherwise", "due", due, "found", found)));
            }
        }
        return findings;
    }
}
