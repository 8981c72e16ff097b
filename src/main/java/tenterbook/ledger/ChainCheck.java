package tenterbook.ledger;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.Chain;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.ledger.revision.RevisionForm.Whole;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Checks the chain, revision by revision. An erasure accounts for the revisions it names, and no others. */
final class ChainCheck {
    private static final Message CHANGED = Message.of("ledger.check.changed");
    private final Map<RecordKey, RecordKey> handles;
    private final Erasures erasures;
    private final List<Finding> findings;
    private final EarlierParts.Commitment commitment = new EarlierParts.Commitment();
    private final Map<RecordKey, Integer> versions = new HashMap<>();
    private final Map<RecordKey, Long> newest = new HashMap<>();
    private final Map<RecordKey, Boolean> withdrawn = new HashMap<>();
    private long committed;
    private long sequence;
    private int format;
    private Digest last = Revision.NONE;

    ChainCheck(Map<RecordKey, RecordKey> handles, Erasures erasures, List<Finding> findings) {
        this.handles = handles;
        this.erasures = erasures;
        this.findings = findings;
    }

    /** A revision of format 1 as committed to; all before the first call of {@link #next}. */
    void earlier(EarlierPart part) {
        Written where = where(part.revision());
        committed++;
        if (part.revision().sequence() != committed) {
            say(where, Message.of("ledger.check.committed-place", "sequence", committed));
        }
        commitment.add(part);
        if (!Chain.digest(part.publicText()).equals(part.publicDigest())) {
            say(where, Message.of("ledger.check.committed-public", "why", CHANGED));
        }
        if (!part.revision().redacted() && !part.kept().digest().equals(part.privateDigest())) {
            say(where, Message.of("ledger.check.committed-private", "why", CHANGED));
        }
        remains(where, part.revision(), part.kept());
    }

    void next(Revision revision) {
        Written where = where(revision);
        if (revision.sequence() != sequence + 1) {
            say(where, Message.of("ledger.check.gap", "sequence", sequence));
        }
        if (!revision.previous().equals(last)) {
            say(where, Message.of("ledger.check.previous"));
        }
        if (!isCanonical(revision)) {
            say(where, Message.of("ledger.check.canonical"));
        }
        if (revision.format() < format) {
            say(where, Message.of("ledger.check.format", "found", revision.format(), "before", format));
        }
        if (revision.form() instanceof Parted parted) {
            parted(where, revision, parted);
        } else {
            whole(where, revision, (Whole) revision.form());
        }
        RecordKey key = stored(revision);
        int version = versions.merge(key, 1, Integer::sum);
        if (version != revision.version()) {
            say(where, Message.of("ledger.check.version", "found", revision.version(), "due", version));
        }
        newest.put(key, revision.sequence());
        withdrawn.put(key, revision.withdrawn());
        sequence = revision.sequence();
        last = revision.hash();
        format = revision.format();
    }

    private void whole(Written where, Revision revision, Whole whole) {
        if (whole.redacted() != erasures.name(revision.sequence())) {
            say(where, excuse(whole.redacted()));
        }
        if (!whole.redacted() && !revision.computedHash().equals(revision.hash())) {
            say(where, Message.of("ledger.check.hash", "why", CHANGED));
        }
    }

    private void parted(Written where, Revision revision, Parted parted) {
        Digest due = format == 1 ? commitment.digest().orElse(null) : null;
        if (!Objects.equals(parted.before(), due)) {
            say(where, Message.of("ledger.check.commitment"));
        }
        if (format == 1 && committed != sequence) {
            say(where, Message.of("ledger.check.commits-to", "committed", committed, "found", sequence));
        }
        if (!Chain.digest(parted.publicText()).equals(parted.publicDigest())) {
            say(where, Message.of("ledger.check.public", "why", CHANGED));
        }
        boolean redacted = revision.redacted();
        if (redacted != erasures.name(revision.sequence())) {
            say(where, parted.kept() != null ? excuse(redacted) : Message.of("ledger.check.private-missing"));
        }
        remains(where, revision, parted.kept());
        if (!parted.privateDigestDue().equals(parted.privateDigest())) {
            say(where, Message.of("ledger.check.private", "why", CHANGED));
        }
        if (!Chain.digest(Chain.chained(revision, parted.publicDigest(), parted.privateDigest()))
                .equals(revision.hash())) {
            say(where, Message.of("ledger.check.hash", "why", CHANGED));
        }
        RecordKey stands = new RecordKey(revision.key().kind(), parted.id());
        if (parted.kept() != null && !stored(revision).equals(stands)) {
            say(
                    where,
                    Message.of(
                            "ledger.check.key",
                            "found",
                            stands.id(),
                            "due",
                            stored(revision).id()));
        }
    }

    private void remains(Written where, Revision revision, @Nullable PrivatePart kept) {
        if (!erasures.left(revision.sequence(), kept)) {
            say(where, Message.of("ledger.check.remains", "why", CHANGED));
        }
    }

    private static Message excuse(boolean redacted) {
        return redacted ? Message.of("ledger.check.redacted") : Message.of("ledger.check.not-redacted");
    }

    /** The key under which a record's revisions of format 2 stand. */
    RecordKey stored(RecordKey key) {
        return handles.getOrDefault(key, key);
    }

    /** The record's own key; the inverse of {@link #stored}. */
    RecordKey own(RecordKey stored) {
        return handles.entrySet().stream()
                .filter(entry -> entry.getValue().equals(stored))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(stored);
    }

    private RecordKey stored(Revision revision) {
        return stored(revision.key());
    }

    /** The newest sequence by stored key, without erased persons and withdrawn records. */
    Map<RecordKey, Long> newest() {
        Map<RecordKey, Long> due = new HashMap<>(newest);
        Set<RecordKey> persons = erasures.persons();
        due.keySet().removeIf(key -> persons.contains(key) && withdrawn.get(key));
        return due;
    }

    private void say(Written where, Written what) {
        findings.add(new Finding(where, what));
    }

    private static Message where(Revision revision) {
        return Message.of("ledger.check.revision", "sequence", revision.sequence(), "record", revision.key());
    }

    private static boolean isCanonical(Revision revision) {
        return revision.form() instanceof Parted parted
                ? isCanonical(parted.shown()) && isCanonical(parted.fields())
                : isCanonical(revision.json());
    }

    private static boolean isCanonical(String json) {
        try {
            return Canonical.json(json).equals(json);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
