package tenterbook.ledger;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.slf4j.LoggerFactory;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Erases a person from the ledger on request (Regulation (EU) 2016/679, Art. 17) and leaves the chain valid.
 *
 * <p>What remains: that there was a record, when it was saved, and that it was erased. A revision of format 2 keeps a digest
 * whose salt is deleted with the contents, so that no guess can be checked against it. A revision of format 1 keeps its
 * unsalted hash of the whole record: whoever guesses every erased word exactly can confirm the guess. That cannot be avoided
 * without breaking the chain.
 */
final class Erasing {
    private static final String NOTE = Message.of("ledger.erase.note").inEnglish();
    private final Handle handle;
    private final LedgerTransaction act;
    private final KnownKinds kinds;
    private final RecordKey person;
    private final String stand;
    private final List<Revision> history;
    private final PersonalTraces traces;
    private final Set<Long> sequences = new TreeSet<>();
    private final List<RecordKey> changed = new ArrayList<>();

    /** @throws ArchiveProblem where there is no such person */
    Erasing(Handle handle, LedgerTransaction act, KnownKinds kinds, Kind<?> kind, String id) {
        if (!kind.privacy().id()) {
            throw Refusal.of("ledger.erase.no-person", "kind", kind.called());
        }
        this.handle = handle;
        this.act = act;
        this.kinds = kinds;
        this.person = kind.key(id);
        this.history = LedgerSql.history(handle, person);
        if (history.isEmpty()) {
            throw new ArchiveProblem(Message.of("ledger.erase.nobody", "kind", kind.called(), "id", id));
        }
        this.traces = new PersonalTraces(person, names(kind));
        this.stand = Handles.of(handle, person, kinds);
    }

    private List<String> names(Kind<?> kind) {
        List<String> names = new ArrayList<>();
        for (Revision revision : history) {
            ObjectNode record = RecordCodec.parsed(revision.json());
            kind.privacy().names().forEach(field -> names.add(record.path(field).asText("")));
        }
        return names;
    }

    PersonalTraces traces() {
        return traces;
    }

    Erased run(LocalDate day, String reason) {
        if (traces.inDraft(reason)) {
            throw Refusal.of("ledger.erase.reason-names");
        }
        long last = LedgerSql.lastSequence(handle);
        newRevisions();
        act.append(
                new RecordKey(person.kind(), stand),
                Privacy.NONE,
                history.get(history.size() - 1).version() + 1,
                true,
                TwoParts.NO_FIELDS,
                NOTE);
        history.forEach(revision -> sequences.add(revision.sequence()));
        Redactions left = new Redactions(handle, kinds, traces);
        List<Redaction> redactions = left.of(last, sequences);
        redactions.forEach(redaction -> sequences.add(redaction.sequence()));
        List<Redaction> emptied = left.emptied(history);
        Map<Long, PrivatePart> remains = new TreeMap<>();
        Stream.concat(emptied.stream(), redactions.stream())
                .forEach(redaction -> remains.put(redaction.sequence(), redaction.kept()));
        int earlier = LedgerSql.identifiers(handle, Erasure.KIND.name()).size();
        Saved<Erasure> erasure = act.create(
                Erasure.KIND,
                new Erasure(
                        "erasure-" + (earlier + 1),
                        day.toString(),
                        reason,
                        person.kind(),
                        stand,
                        List.copyOf(sequences),
                        digests(remains)));
        ErasingRows rows = new ErasingRows(handle);
        rows.begin(erasure.sequence(), sequences);
        history.forEach(revision -> rows.delete(revision));
        emptied.forEach(redaction -> rows.empty(redaction, stand));
        redactions.forEach(rows::redact);
        sequences.forEach(sequence -> rows.remain(sequence, remains.get(sequence)));
        rows.end(erasure.sequence());
        rows.forget(person, stand);
        int drafts = rows.dropDrafts(traces);
        return new Erased(
                erasure.sequence(),
                history.size(),
                List.copyOf(changed),
                redactions.size(),
                drafts,
                rows.dropSearchesAndWords(traces),
                left.places(),
                0);
    }

    private static Map<Long, Digest> digests(Map<Long, PrivatePart> remains) {
        Map<Long, Digest> digests = new TreeMap<>();
        remains.forEach((sequence, kept) -> digests.put(sequence, kept.digest()));
        return digests;
    }

    /** A new revision, without the person, of each record in use that has traces of them. */
    private void newRevisions() {
        for (RecordKey key : ErasingRows.inUse(handle, person)) {
            Newest newest = LedgerSql.newest(handle, key).orElseThrow();
            Privacy privacy = kinds.privacy(key.kind());
            ObjectNode record = RecordCodec.parsed(newest.json());
            Collection<String> fields = Redactions.pointers(TwoParts.split(newest.json(), privacy));
            if (traces.takeOut(record, privacy, fields)) {
                refuseUnreadable(newest, record);
                act.append(key, privacy, newest.version() + 1, false, Canonical.json(record), NOTE);
                changed.add(key);
            }
        }
    }

    /** A record that was readable before must be readable after, or a piece would be lost with a person. */
    private void refuseUnreadable(Newest newest, ObjectNode record) {
        Optional<Kind<?>> kind = kinds.kind(newest.key().kind());
        if (kind.isPresent() && reads(kind.get(), newest.json()) && !reads(kind.get(), record.toString())) {
            throw new ArchiveProblem(Message.of("ledger.erase.needed", "record", newest.key()));
        }
    }

    private static boolean reads(Kind<?> kind, String record) {
        try {
            kind.codec().fromText(record);
            return true;
        } catch (RuntimeException e) {
            LoggerFactory.getLogger(Erasing.class).debug("A {} cannot be read", kind.called(), e);
            return false;
        }
    }

    /**
     * @param shown the public part of a revision of format 1; unchanged
     * @param kept the remaining private part, with the salt of the digest that the erasure keeps of it
     */
    record Redaction(long sequence, boolean whole, String shown, PrivatePart kept) {}
}
