package tenterbook.web.form;

import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;

/** A gallery, buyer or borrower. */
public final class PartyForm implements RecordForm<Party> {
    @Override
    public Kind<Party> kind() {
        return Kinds.PARTY;
    }

    @Override
    public Form filled(Party party) {
        return Form.empty()
                .put("id", party.id())
                .put("name", party.name())
                .put("kind", party.kind())
                .put("contact", party.contact())
                .put("notes", party.notes());
    }

    @Override
    public Party read(Form form, Party old) {
        if (form.text("name").isEmpty()) {
            form.problem("name", "Give the name as it should stand on paper.");
        }
        PartyId id = old != null ? old.id() : form.read("id", null, PartyId::new);
        if (id == null) {
            form.problem("id", "Give a short name for lists, as in ‘sala-vermia’.");
        }
        Party party = form.build(
                "name",
                () -> new Party(id, form.text("name"), form.text("kind"), form.text("contact"), form.text("notes")));
        return form.hasProblems() ? null : party;
    }
}
