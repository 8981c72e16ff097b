package tenterbook.documents.kind;

import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentSettings;
import tenterbook.ledger.Saved;
import tenterbook.piece.Party;

/**
 * The other party of a document.
 *
 * @param name as printed; empty where nobody is named
 * @param contact printed; empty where it is not recorded or not chosen
 */
record Parties(String name, String contact) {
    /** The party of the archive by its name or identifier; another name stands as typed. */
    static Parties of(Archive archive, DocumentSettings request) {
        Optional<Party> known = archive.ledger().all(Kinds.PARTY).stream()
                .map(Saved::record)
                .filter(party ->
                        party.name().equalsIgnoreCase(request.agreement().party())
                                || party.id().value().equals(request.agreement().party()))
                .findFirst();
        return known.map(party -> new Parties(party.title(), request.agreement().contact() ? party.contact() : ""))
                .orElse(new Parties(request.agreement().party(), ""));
    }
}
