package tenterbook.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.NamedParts;
import tenterbook.ledger.revision.RecordKey;

/** Checks that the records of one act refer to existing parts and keep those that others refer to; see {@link NamedParts}. */
final class PartsInUse {
    /** @param by a record that was saved and refers to {@code part} */
    private record Named(RecordKey by, NamedParts.Use part) {}

    private final Handle handle;
    private final KnownKinds kinds;
    private final List<NamedParts.Use> lost = new ArrayList<>();
    private final List<Named> named = new ArrayList<>();

    PartsInUse(Handle handle, KnownKinds kinds) {
        this.handle = handle;
        this.kinds = kinds;
    }

    /**
     * Notes what must hold at the end of the act. A reference that was already broken does not hinder other changes.
     *
     * @param before stored text of the version before; empty where it was not in use
     */
    <T> void saved(Kind<T> kind, T record, Optional<String> before) {
        RecordKey key = kind.key(kind.id().apply(record));
        Optional<T> was = before.flatMap(text -> read(kind, text));
        List<String> has = kind.parts().own().apply(record);
        was.map(old -> kind.parts().own().apply(old)).orElse(List.of()).stream()
                .filter(part -> !has.contains(part))
                .forEach(part -> lost.add(new NamedParts.Use(key, part)));
        List<NamedParts.Use> earlier =
                was.map(old -> kind.parts().references().apply(old)).orElse(List.of());
        kind.parts().references().apply(record).stream()
                .filter(use -> !earlier.contains(use))
                .forEach(use -> named.add(new Named(key, use)));
    }

    /** @throws StillReferenced for the first missing part */
    void check() {
        for (NamedParts.Use part : lost) {
            List<RecordKey> users = LedgerSql.referencedBy(handle, part.record()).stream()
                    .filter(user -> !has(part) && refersTo(user, part))
                    .toList();
            if (!users.isEmpty()) {
                throw StillReferenced.part(part, users);
            }
        }
        for (Named each : named) {
            if (refersTo(each.by, each.part) && !has(each.part)) {
                throw StillReferenced.missing(each.by, each.part);
            }
        }
    }

    private boolean has(NamedParts.Use part) {
        return kinds.kind(part.record().kind()).map(kind -> has(kind, part)).orElse(true);
    }

    private <T> boolean has(Kind<T> kind, NamedParts.Use part) {
        return newest(kind, part.record())
                .map(record -> kind.parts().own().apply(record).contains(part.part()))
                .orElse(true);
    }

    private boolean refersTo(RecordKey user, NamedParts.Use part) {
        return kinds.kind(user.kind()).map(kind -> refersTo(kind, user, part)).orElse(false);
    }

    private <T> boolean refersTo(Kind<T> kind, RecordKey user, NamedParts.Use part) {
        return newest(kind, user)
                .map(record -> kind.parts().references().apply(record).contains(part))
                .orElse(false);
    }

    private <T> Optional<T> newest(Kind<T> kind, RecordKey key) {
        return LedgerSql.newest(handle, key)
                .filter(revision -> !revision.withdrawn())
                .flatMap(revision -> read(kind, revision.json()));
    }

    /** Empty where unreadable, which ‘check’ reports and which must not hinder a change. */
    private static <T> Optional<T> read(Kind<T> kind, String text) {
        try {
            return Optional.of(kind.codec().fromText(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
