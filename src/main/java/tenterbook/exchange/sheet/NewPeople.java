package tenterbook.exchange.sheet;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.NewIdentifier;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;

/** People whom a sheet names and of whom nobody knew: recorded with the first row that is written and names them. */
final class NewPeople {
    private final Archive archive;
    private final boolean chosen;
    private final Map<String, Party> byName = new HashMap<>();
    private final Map<RecordKey, Party> byKey = new HashMap<>();

    NewPeople(Archive archive, ImportChoices choices) {
        this.archive = archive;
        this.chosen = choices.newPeople();
    }

    /** The identifier of a person of this name, whom nobody recorded; empty where such are not wanted. */
    Optional<String> called(String name) {
        return chosen
                ? Optional.of(byName.computeIfAbsent(name.strip().toLowerCase(Locale.ROOT), each -> made(name.strip()))
                        .id()
                        .value())
                : Optional.empty();
    }

    private Party made(String name) {
        String id = NewIdentifier.of(name, "person", start -> {
            List<String> used = archive.ledger().idsEverUsed(Kinds.PARTY, start);
            return each -> used.contains(each) || byKey.containsKey(Kinds.PARTY.key(each));
        });
        Party party = new Party(new PartyId(id), name, "", "", "");
        byKey.put(Kinds.PARTY.key(id), party);
        return party;
    }

    boolean has(RecordKey key) {
        return byKey.containsKey(key);
    }

    /** Records those of these keys that are new and not recorded yet. */
    void write(LedgerTransaction act, Iterable<RecordKey> named, String note) {
        for (RecordKey key : named) {
            Party party = byKey.get(key);
            if (party != null && act.find(Kinds.PARTY, key.id()).isEmpty()) {
                act.save(Kinds.PARTY, party, 0, note);
            }
        }
    }
}
