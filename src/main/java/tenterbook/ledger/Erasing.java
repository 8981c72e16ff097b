package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
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
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Takes a person out of the ledger, as Regulation (EU) 2016/679 Art. 17 lets a person ask, and leaves the chain whole.
 *
 * <p>What is left is that there was a record, when it was saved, and that it was erased. A revision of format 2 keeps a
 * digest whose salt is gone with the contents, so that no guess can be tried against it. A revision of format 1 keeps its
 * hash, which covers all it said without a salt: whoever guesses every erased word of it exactly can see that the guess is
 * right. That cannot be helped without breaking the chain.
 */
final class Erasing {
    private static final String NOTE = Message.of("ledger.erase.note").inEnglish();
    private static final int PAGE = 1000;
    private final Handle handle;
    private final LedgerTransaction act;
    private final KnownKinds kinds;
    private final RecordKey person;
    private final String stand;
    private final List<Revision> history;
    private final PersonalTraces traces;
    private final Set<Long> sequences = new TreeSet<>();
    private final List<RecordKey> changed = new ArrayList<>();
    private final Collection<String> left = new TreeSet<>();

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
        this.traces = PersonalTraces.of(kind, person, history);
        this.stand = Handles.of(handle, person, kinds);
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
        List<Redaction> redactions = redactions(last);
        redactions.forEach(redaction -> sequences.add(redaction.sequence()));
        List<Redaction> emptied = emptied();
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
                List.copyOf(left),
                0);
    }

    private static Map<Long, Digest> digests(Map<Long, PrivatePart> remains) {
        Map<Long, Digest> digests = new TreeMap<>();
        remains.forEach((sequence, kept) -> digests.put(sequence, kept.digest()));
        return digests;
    }

    /** What remains of the person's own revisions of format 1: their public part, which stands in the same row. */
    private List<Redaction> emptied() {
        return history.stream()
                .filter(revision -> revision.form() instanceof RevisionForm.Whole)
                .map(revision ->
                        EarlierParts.after(handle, revision.sequence() - 1, 1).get(0))
                .map(part -> {
                    String shown = part.parts().shown();
                    String fields = TwoParts.split(shown, part.pointers()).fields();
                    return new Redaction(
                            part.revision().sequence(),
                            true,
                            shown,
                            new PrivatePart(kinds.salt(), "", "", null, fields, true));
                })
                .toList();
    }

    /** A new revision, without the person, of each record in use that speaks of them. */
    private void newRevisions() {
        for (RecordKey key : ErasingRows.inUse(handle, person)) {
            Newest newest = LedgerSql.newest(handle, key).orElseThrow();
            Privacy privacy = kinds.privacy(key.kind());
            ObjectNode record = RecordCodec.parsed(newest.json());
            Collection<String> fields = pointers(TwoParts.split(newest.json(), privacy));
            if (traces.takeOut(record, privacy, fields)) {
                refuseUnreadable(newest, record);
                act.append(key, privacy, newest.version() + 1, false, Canonical.json(record), NOTE);
                changed.add(key);
            }
        }
    }

    /** What could be read before must be readable after, or a piece would be lost with a person. */
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
     * What remains of a revision.
     *
     * @param shown the public part of a revision of format 1, whose text is one; it is not changed
     * @param kept the private part as it remains, with the salt of the digest that the erasure keeps of it
     */
    record Redaction(long sequence, boolean whole, String shown, PrivatePart kept) {}

    private List<Redaction> redactions(long last) {
        List<Redaction> redactions = new ArrayList<>();
        Set<Long> own = new TreeSet<>(sequences);
        long sequence = 0;
        List<EarlierPart> parts = EarlierParts.after(handle, sequence, PAGE);
        while (!parts.isEmpty()) {
            for (EarlierPart part : parts) {
                sequence = part.revision().sequence();
                if (!own.contains(sequence)) {
                    redaction(part.revision(), part.kept().id(), true, part.parts(), part.pointers())
                            .ifPresent(redactions::add);
                }
            }
            parts = EarlierParts.after(handle, sequence, PAGE);
        }
        List<Revision> page = LedgerSql.after(handle, sequence, PAGE);
        while (!page.isEmpty()) {
            for (Revision revision : page) {
                sequence = revision.sequence();
                RevisionForm.Parted form = (RevisionForm.Parted) revision.form();
                TwoParts two = new TwoParts(form.shown(), form.fields());
                if (!own.contains(sequence)) {
                    redaction(revision, form.kept() == null ? null : form.kept().id(), false, two, pointers(two))
                            .filter(redaction -> redaction.sequence() <= last)
                            .ifPresent(redactions::add);
                }
            }
            page = LedgerSql.after(handle, sequence, PAGE);
        }
        return redactions;
    }

    private Optional<Redaction> redaction(
            Revision revision, @Nullable String id, boolean whole, TwoParts two, Collection<String> fields) {
        ObjectNode record = RecordCodec.parsed(two.merged());
        boolean author = traces.in(revision.author());
        boolean note = traces.in(revision.note());
        Privacy privacy = kinds.privacy(revision.key().kind());
        boolean found = traces.takeOut(record, privacy, fields);
        ObjectNode kept = record.objectNode();
        for (String pointer : fields) {
            JsonNode value = record.at(pointer);
            if (!value.isMissingNode()) {
                kept.set(pointer, value);
            }
        }
        TwoParts after = new TwoParts(two.shown(), Canonical.json(kept));
        traces.left(RecordCodec.parsed(after.merged()), privacy)
                .forEach(where -> left.add(Message.of(
                                "ledger.erase.left",
                                "sequence",
                                revision.sequence(),
                                "record",
                                revision.key(),
                                "field",
                                where.substring(1))
                        .inEnglish()));
        return found || author || note
                ? Optional.of(new Redaction(
                        revision.sequence(),
                        whole,
                        two.shown(),
                        new PrivatePart(
                                kinds.salt(),
                                author ? "" : revision.author(),
                                note ? "" : revision.note(),
                                id,
                                after.fields(),
                                true)))
                : Optional.empty();
    }

    private static Collection<String> pointers(TwoParts two) {
        List<String> pointers = new ArrayList<>();
        RecordCodec.parsed(two.fields()).fieldNames().forEachRemaining(pointers::add);
        return pointers;
    }
}
