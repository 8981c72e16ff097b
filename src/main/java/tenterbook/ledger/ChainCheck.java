package tenterbook.ledger;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import tenterbook.ledger.RevisionForm.Parted;
import tenterbook.ledger.RevisionForm.Whole;
import tenterbook.measure.Digest;

/** Follows the chain, revision by revision. An erasure excuses what it names, and nothing else. */
final class ChainCheck {
    private static final String CHANGED = "it was changed after it was written";
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

    /** A revision of format 1 as it was committed to; all of them come before the first call of {@link #next}. */
    void earlier(EarlierPart part) {
        String where = where(part.revision());
        committed++;
        if (part.revision().sequence() != committed) {
            say(where, "is committed to in the place of revision %d".formatted(committed));
        }
        commitment.add(part);
        if (!Chain.digest(part.publicText()).equals(part.publicDigest())) {
            say(where, "its public part does not give the digest that was committed to: " + CHANGED);
        }
        if (!part.revision().redacted() && !part.kept().digest().equals(part.privateDigest())) {
            say(where, "its private part does not give the digest that was committed to: " + CHANGED);
        }
    }

    void next(Revision revision) {
        String where = where(revision);
        if (revision.sequence() != sequence + 1) {
            say(where, "follows revision %d: one or more are missing".formatted(sequence));
        }
        if (!revision.previous().equals(last)) {
            say(where, "does not name the hash of the revision before it");
        }
        if (!isCanonical(revision)) {
            say(where, "its record is not in canonical form (RFC 8785)");
        }
        if (revision.format() < format) {
            say(where, "is of format %d after one of format %d".formatted(revision.format(), format));
        }
        if (revision.form() instanceof Parted parted) {
            parted(where, revision, parted);
        } else {
            whole(where, revision, (Whole) revision.form());
        }
        RecordKey key = stored(revision);
        int version = versions.merge(key, 1, Integer::sum);
        if (version != revision.version()) {
            say(where, "is version %d where %d was due".formatted(revision.version(), version));
        }
        newest.put(key, revision.sequence());
        withdrawn.put(key, revision.withdrawn());
        sequence = revision.sequence();
        last = revision.hash();
        format = revision.format();
    }

    private void whole(String where, Revision revision, Whole whole) {
        if (whole.redacted() != erasures.name(revision.sequence())) {
            say(where, excuse(whole.redacted()));
        }
        if (!whole.redacted() && !revision.computedHash().equals(revision.hash())) {
            say(where, "its contents do not give its hash: " + CHANGED);
        }
    }

    private void parted(String where, Revision revision, Parted parted) {
        Digest due = format == 1 ? commitment.digest().orElse(null) : null;
        if (!Objects.equals(parted.before(), due)) {
            say(where, "does not commit to the revisions of format 1 before it as they stand");
        }
        if (format == 1 && committed != sequence) {
            say(where, "commits to %d revisions of format 1, but %d stand before it".formatted(committed, sequence));
        }
        if (!Chain.digest(parted.publicText()).equals(parted.publicDigest())) {
            say(where, "its public part does not give its digest: " + CHANGED);
        }
        boolean redacted = revision.redacted();
        if (redacted != erasures.name(revision.sequence())) {
            say(
                    where,
                    parted.kept() != null ? excuse(redacted) : "its private part is missing, and no erasure names it");
        }
        if (!parted.privateDigestDue().equals(parted.privateDigest())) {
            say(where, "its private part does not give its digest: " + CHANGED);
        }
        if (!Chain.digest(Chain.chained(revision, parted.publicDigest(), parted.privateDigest()))
                .equals(revision.hash())) {
            say(where, "its contents do not give its hash: " + CHANGED);
        }
        RecordKey stands = new RecordKey(revision.key().kind(), parted.id());
        if (parted.kept() != null && !stored(revision).equals(stands)) {
            say(
                    where,
                    "stands under %s where %s was due"
                            .formatted(stands.id(), stored(revision).id()));
        }
    }

    private static String excuse(boolean redacted) {
        return redacted
                ? "is marked as redacted, but no erasure names it"
                : "is named by an erasure, but nothing was taken out of it";
    }

    /** The key under which a record's revisions of format 2 stand. */
    RecordKey stored(RecordKey key) {
        return handles.getOrDefault(key, key);
    }

    /** The record's own key; the other way of {@link #stored}. */
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

    /** By stored key, the newest sequence; without those who were erased and withdrawn. */
    Map<RecordKey, Long> newest() {
        Map<RecordKey, Long> due = new HashMap<>(newest);
        Set<RecordKey> persons = erasures.persons();
        due.keySet().removeIf(key -> persons.contains(key) && withdrawn.get(key));
        return due;
    }

    private void say(String where, String what) {
        findings.add(new Finding(where, what));
    }

    private static String where(Revision revision) {
        return "revision %d (%s)".formatted(revision.sequence(), revision.key());
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
