package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.Erasing.Redaction;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.words.Message;

/** Computes what an erasure leaves of each revision; changes nothing. */
final class Redactions {
    private static final int PAGE = 1000;
    private final Handle handle;
    private final KnownKinds kinds;
    private final PersonalTraces traces;
    private final Collection<String> left = new TreeSet<>();

    Redactions(Handle handle, KnownKinds kinds, PersonalTraces traces) {
        this.handle = handle;
        this.kinds = kinds;
        this.traces = traces;
    }

    /** Places in public parts where the person is still named; complete after {@link #of}. */
    List<String> places() {
        return List.copyOf(left);
    }

    /** What remains of the person's own revisions of format 1: their public part. */
    List<Redaction> emptied(List<Revision> history) {
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

    /**
     * What remains of every revision with traces of the person.
     *
     * @param last the last sequence before the erasure
     * @param own sequences of the person's own revisions, which are left out
     */
    List<Redaction> of(long last, Set<Long> own) {
        List<Redaction> redactions = new ArrayList<>();
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

    static Collection<String> pointers(TwoParts two) {
        List<String> pointers = new ArrayList<>();
        RecordCodec.parsed(two.fields()).fieldNames().forEachRemaining(pointers::add);
        return pointers;
    }
}
