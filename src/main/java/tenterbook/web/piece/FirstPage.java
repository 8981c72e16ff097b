package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Conflict;
import tenterbook.measure.LengthUnits;
import tenterbook.piece.Studio;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.Forms;
import tenterbook.web.form.RecordForm;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;

/** The first page of an archive in which nothing was ever saved or typed: whose it is, and the letters of its numbers. */
final class FirstPage {
    private final Site site;
    private final RecordForm<Studio> forms;

    FirstPage(Site site) {
        this.site = site;
        this.forms = new Forms(site::currency).studio();
    }

    void routes(RoutesConfig routes) {
        routes.post("/first", this::save);
    }

    /** Whether it is to be shown. */
    boolean due() {
        return site.ledger().lastSequence() == 0 && site.ledger().drafts().all().isEmpty();
    }

    void show(Context ctx, Form form) {
        Html.show(ctx, "first", Map.of("page", site.page(ctx, w("pieces.first-title"), "pieces"), "form", form));
    }

    /** A new archive has one unit for all lengths. Also where it was skipped, since the studio then has a record and the question is not asked again. */
    private void save(Context ctx) {
        Form form = Form.of(FormEncoding.fields(ctx));
        Form typed = form.checked("skip") ? Form.empty() : form;
        Studio studio = forms.read(typed.put("lengths", LengthUnits.CENTIMETRES), null);
        if (studio == null) {
            ctx.status(422);
            show(ctx, form);
            return;
        }
        try {
            site.write(act -> act.create(Kinds.STUDIO, studio));
            FlashMessage.andGo(ctx, w(form.checked("skip") ? "pieces.first-skipped" : "pieces.first-saved"), "/");
        } catch (Conflict e) {
            ctx.redirect("/studio", io.javalin.http.HttpStatus.SEE_OTHER);
        }
    }
}
