package tenterbook.web.record;

import io.javalin.http.Context;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.web.form.Form;
import tenterbook.web.page.Visitor;
import tenterbook.web.page.Words;

/**
 * What was typed into the forms of one kind and is not saved.
 *
 * @param kind name of the kind
 * @param fresh name for the form of a new record
 */
record RecordDrafts(Drafts drafts, String kind, String fresh) {
    /** In an address and in a form: meant is the typing that was put aside. */
    private static final String ASIDE = "aside";

    private static final Logger LOG = LoggerFactory.getLogger(RecordDrafts.class);

    String name(String id) {
        return kind + "/" + (id.isEmpty() ? fresh : id);
    }

    /** What was typed and not saved, or what was put aside where the address asks for that. */
    Optional<Drafts.Draft> find(Context ctx, String id) {
        return drafts.find(Visitor.now().own((aside(ctx) ? DraftPlace.ASIDE : "") + name(id)));
    }

    private static boolean aside(Context ctx) {
        return ctx.queryParam(ASIDE) != null;
    }

    /** Notes in the form whether it shows what was put aside, which is discarded once that is saved. */
    static void mark(Context ctx, Form form) {
        form.put(ASIDE, aside(ctx) ? "1" : "");
    }

    /** Keeps the typing; returns a sentence where the disk does not take it, else an empty text. */
    String keep(String id, Form form) {
        try {
            drafts.keep(Visitor.now().own(name(id)), form.encoded());
            return "";
        } catch (ArchiveProblem e) {
            return Words.sentence(e);
        }
    }

    /** After saving. A failure is only logged: the record is saved, and a draft that remains is offered again. */
    void discard(String id, Form form) {
        try {
            drafts.discard(Visitor.now().own(name(id)));
            if (form.has(ASIDE)) {
                drafts.discard(Visitor.now().own(DraftPlace.ASIDE + name(id)));
            }
        } catch (ArchiveProblem e) {
            LOG.warn("The draft {} remains", name(id), e);
        }
    }
}
