package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.RecordKey;

/**
 * Where unsaved typing belongs.
 *
 * @param label as in 'piece V24-001' or 'a new board pair'
 * @param form address of the form it was typed in
 * @param record address to go to when it is put aside
 * @param needs the record without which that form is not there; null for none
 */
public record DraftPlace(String label, String form, String record, RecordKey needs) {
    /** Before the name of typing that was put aside. The form offers it again where its address ends in {@code ?aside=1}. */
    static final String ASIDE = "aside/";

    /** Before the number of the piece that a new record is to be of; no record's own name begins with it. */
    public static final String OF = "@";

    /** @param name a kind, a slash and the record's name; nothing after it for a new one */
    public static DraftPlace of(String name) {
        if (name.startsWith(ASIDE)) {
            DraftPlace place = of(name.substring(ASIDE.length()));
            return new DraftPlace(
                    w("form.draft-aside", "draft", place.label), place.form + "?aside=1", place.record, place.needs);
        }
        String[] parts = name.split("/", 2);
        String kind = parts[0];
        String id = parts.length > 1 ? parts[1] : "";
        String called = kind.replace('-', ' ');
        if (kind.isBlank()) {
            return new DraftPlace(name, "/", "/", null);
        }
        if (id.startsWith(OF)) {
            String piece = id.substring(OF.length());
            String list = "/pieces/" + piece + "/condition";
            return new DraftPlace(
                    w("form.draft-of-new-of", "kind", called, "piece", piece),
                    list + "/new",
                    list,
                    Kinds.PIECE.key(piece));
        }
        if (id.isBlank()) {
            String form = RecordView.pathOf(new RecordKey(kind, "-")).replaceAll("/-$", "/new");
            return new DraftPlace(w("form.draft-of-new", "kind", called), form, form, null);
        }
        RecordKey key = new RecordKey(kind, id);
        String path = RecordView.pathOf(key);
        return new DraftPlace(called + " " + id, path + "/edit", path, key);
    }
}
