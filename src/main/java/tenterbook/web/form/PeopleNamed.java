package tenterbook.web.form;

import static tenterbook.web.page.Words.w;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Party;

/** People in a form may be given by short name or by the name in their record, in any case; pieces by any number they had. */
public final class PeopleNamed {
    private PeopleNamed() {}

    /** Replaces names by short names; notes a problem where a name matches nobody or several people. */
    public static void inForm(Archive archive, Kind<?> kind, Form form) {
        if (kind.equals(Kinds.PIECE)) {
            put(archive, form, "holder");
            form.rows("events").forEach(event -> put(archive, event, "party"));
        } else if (kind.equals(Kinds.AGREEMENT)) {
            put(archive, form, "party");
            form.rows("pieces").forEach(row -> TypedNumber.put(archive, row, "piece"));
        } else if (kind.equals(Kinds.EXAMINATION)) {
            put(archive, form, "party");
            put(archive, form.inside("handedOver"), "party");
            put(archive, form.inside("received"), "party");
        }
    }

    /** Shows the name in place of the short name in a field, where only this person has it. */
    public static void show(Archive archive, Form form, String field) {
        Optional.of(form.text(field))
                .filter(id -> !id.isEmpty())
                .flatMap(archive::party)
                .map(Party::name)
                .filter(name -> archive.partiesCalled(name).size() == 1)
                .ifPresent(name -> form.put(field, name));
    }

    /** As {@link #inForm}, for one field. */
    public static void put(Archive archive, Form form, String field) {
        String typed = form.text(field);
        if (typed.isEmpty() || archive.party(typed).isPresent()) {
            return;
        }
        List<Party> found = archive.partiesCalled(typed);
        if (found.size() == 1) {
            form.put(field, found.get(0).id());
        } else if (found.isEmpty()) {
            form.problem(field, w("form.no-such-person", "found", typed));
        } else {
            String people = found.stream().map(party -> party.id().value()).collect(Collectors.joining(", "));
            form.problem(field, w("form.several-people", "found", typed, "people", people));
        }
    }
}
