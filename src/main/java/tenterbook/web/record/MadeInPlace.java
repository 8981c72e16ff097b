package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import tenterbook.ledger.Conflict;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.form.RecordForm;
import tenterbook.web.page.Words;

/**
 * Bolts, lots, boards and people made from within the form that needs them: the order 'make cloth cuts.0 cloth' makes a bolt of
 * what is typed under {@code make.cuts-0} and chooses it in the field {@code cuts.0.cloth}; '-' stands for the form itself.
 * Everything else typed stays as it is. What is typed there when the whole form is saved is made too.
 */
final class MadeInPlace {
    private final Site site;
    private final Forms forms;

    MadeInPlace(Site site) {
        this.site = site;
        this.forms = new Forms(site::currency);
    }

    static boolean asked(Form form) {
        return order(form.text("order"));
    }

    private static boolean order(String text) {
        return text.matches("make (board|cloth|lot|party) (-|[A-Za-z]+(\\.([A-Za-z]+|\\d{1,4}))*) [a-z]+");
    }

    /** Makes what was typed without pressing its button; each has its order beside its name. */
    void makeRest(Form form) {
        for (String key : form.parts("make")) {
            Form typed = form.inside("make").inside(key);
            if (typed.has("name") && order(typed.text("order"))) {
                form.put("order", typed.text("order"));
                make(form);
            }
        }
    }

    /** What the fields of a new record are kept under, for the row that needs it. */
    private static String key(String row) {
        return row.isEmpty() ? "form" : row.replace('.', '-');
    }

    /** Makes what the order asks; what stands against it is noted beside the fields. */
    void make(Form form) {
        String[] words = form.text("order").split(" ");
        form.put("order", "");
        String key = key(words[2].equals("-") ? "" : words[2]);
        Form typed = form.inside("make").inside(key);
        if (!typed.has("name")) {
            typed.problem("name", w("form.make.needs-a-name"));
            return;
        }
        Form made = Form.empty().put("id", typed.text("id"));
        String id = "";
        switch (words[1]) {
            case "board" -> {
                made.put("image", typed.text("name")).row("states", 0).put("name", "I");
                id = create(forms.boards(), made, typed);
                id = id.isEmpty() ? "" : id + "/I";
            }
            case "party" -> id = create(forms.people(), made.put("name", typed.text("name")), typed);
            case "cloth" -> {
                made.put("name", typed.text("name"));
                made.row("content", 0).put("fibre", typed.text("fibre")).put("percent", typed.text("percent"));
                id = create(forms.cloths(), made, typed);
            }
            default ->
                id = create(forms.lots(), made.put("name", typed.text("name")).put("role", typed.text("role")), typed);
        }
        if (!id.isEmpty()) {
            typed.put("name", "").put("id", "").put("fibre", "").put("percent", "");
            form.put((words[2].equals("-") ? "" : words[2] + ".") + words[3], id);
        }
    }

    /** The short name of the record made; empty where it could not be. */
    private <T> String create(RecordForm<T> of, Form made, Form typed) {
        ShortCodes.fill(site, of.kind(), made);
        T record = of.read(made, null);
        if (record == null) {
            String sentences = String.join(" ", made.problemsById().values());
            typed.problem(made.inDoubt("content") ? "percent" : "id", sentences);
            return "";
        }
        try {
            site.write(act -> act.create(of.kind(), record));
            return of.kind().id().apply(record);
        } catch (Conflict | ArchiveProblem e) {
            typed.problem("id", Words.sentence(e));
            return "";
        }
    }
}
