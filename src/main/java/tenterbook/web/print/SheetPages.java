package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.paper.TestPage;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.LabelSheetForm;
import tenterbook.web.page.Address;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;

/** Sheets and rolls of labels, kept by name with the printer's offset and scale, and the test page to measure these. */
public final class SheetPages {
    private final Site site;
    private final LabelSheetForm forms = new LabelSheetForm();

    public SheetPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/print/sheets", ctx -> show(ctx, 200, null, ""));
        routes.post("/print/sheets", this::save);
        routes.post("/print/sheets/withdraw", this::withdraw);
        routes.get("/print/sheets/test.pdf", this::test);
    }

    private Optional<Saved<LabelSheet>> named(String name) {
        return name == null || name.isBlank()
                ? Optional.empty()
                : site.archive().ledger().find(Kinds.LABEL_SHEET, name.strip());
    }

    private void show(Context ctx, int status, Form typed, String trouble) {
        Optional<Saved<LabelSheet>> shown = typed == null ? named(ctx.queryParam("name")) : Optional.empty();
        Form form = typed != null
                ? typed
                : shown.map(saved -> forms.filled(saved.record()).put("version", saved.version()))
                        .orElseGet(forms::begun);
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("print.sheets"), "print"));
        values.put("form", form);
        values.put("trouble", trouble);
        values.put("sheets", site.records(Kinds.LABEL_SHEET));
        ctx.status(status);
        Html.show(ctx, "sheets", values);
    }

    private void save(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        LabelSheet sheet = forms.read(form, null);
        if (sheet == null) {
            show(ctx, 422, form, "");
            return;
        }
        int version = form.version(0);
        try {
            site.archive().ledger().write(site.author(), act -> act.save(Kinds.LABEL_SHEET, sheet, version, ""));
            FlashMessage.andGo(
                    ctx,
                    w("print.sheet-kept", "name", sheet.name()),
                    "/print/sheets?name=" + Address.encoded(sheet.name()));
        } catch (Conflict e) {
            show(ctx, 409, form, Words.sentence(e));
        } catch (ArchiveProblem e) {
            show(ctx, 500, form, Words.sentence(e));
        }
    }

    private void withdraw(Context ctx) {
        String name = ctx.formParam("name");
        Saved<LabelSheet> sheet = named(name).orElseThrow(() -> NotFound.of(Kinds.LABEL_SHEET, name));
        site.archive().ledger().write(site.author(), act -> {
            act.withdraw(Kinds.LABEL_SHEET, sheet.record().name(), sheet.version(), "");
            return null;
        });
        FlashMessage.andGo(ctx, w("print.sheet-put-away", "name", name), "/print/sheets");
    }

    private void test(Context ctx) throws IOException {
        String name = ctx.queryParam("name");
        LabelSheet sheet = named(name)
                .orElseThrow(() -> NotFound.of(Kinds.LABEL_SHEET, name))
                .record();
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        TestPage.print(sheet, pdf, site.clock());
        Uncached.pdf(ctx, "test-page", pdf.toByteArray());
    }

    /** As in '3 × 7 labels of 63.5 × 38.1 mm'. */
    public static String size(LabelSheet sheet) {
        return w(
                "print.sheet-size",
                "columns",
                sheet.columns(),
                "rows",
                sheet.rows(),
                "width",
                Numeric.MILLIMETRES.text(sheet.labelWidthMm()),
                "height",
                Numeric.MILLIMETRES.text(sheet.labelHeightMm()),
                "roll",
                sheet.roll());
    }
}
