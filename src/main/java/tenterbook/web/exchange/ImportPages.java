package tenterbook.web.exchange;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.exchange.sheet.ColumnPlan;
import tenterbook.exchange.sheet.ColumnPlan.Chosen;
import tenterbook.exchange.sheet.ColumnPlan.DayOrder;
import tenterbook.exchange.sheet.ColumnProposal;
import tenterbook.exchange.sheet.ImportChoices;
import tenterbook.exchange.sheet.ImportFolder;
import tenterbook.exchange.sheet.ImportFolder.Entry;
import tenterbook.exchange.sheet.ImportUndo;
import tenterbook.exchange.sheet.JudgedRow;
import tenterbook.exchange.sheet.SheetColumn;
import tenterbook.exchange.sheet.SheetHead;
import tenterbook.exchange.sheet.SheetImport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.job.Job;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;
import tenterbook.words.Message;

/** Bringing in a sheet: sending it, choosing its columns, seeing every row's verdict, writing, taking back. */
public final class ImportPages {
    private final Site site;
    private final ImportFolder folder;

    public ImportPages(Site site) {
        this.site = site;
        this.folder = new ImportFolder(site.archive().folder().root());
    }

    public void routes(RoutesConfig routes) {
        routes.get("/import", ctx -> list(ctx, 200, ""));
        routes.post("/import", this::send);
        routes.get("/import/{id}", ctx -> columns(ctx, 200, entry(ctx), ""));
        routes.post("/import/{id}", this::judge);
        routes.get("/import/{id}/rows", this::rows);
        routes.post("/import/{id}/people", this::people);
        routes.post("/import/{id}/write", this::write);
        routes.post("/import/{id}/undo", this::undo);
        routes.post("/import/{id}/discard", ctx -> {
            folder.discard(entry(ctx));
            FlashMessage.andGo(ctx, w("import.discarded"), "/import");
        });
    }

    private Entry entry(Context ctx) throws IOException {
        return folder.find(ctx.pathParam("id"))
                .orElseThrow(() -> new NotFound(Message.of("import.not-there", "id", ctx.pathParam("id"))));
    }

    private void list(Context ctx, int status, String problem) throws IOException {
        ctx.status(status);
        Html.show(
                ctx,
                "imports",
                Map.of(
                        "page", site.page(ctx, w("import.title"), "studio"),
                        "entries", folder.all(),
                        "problem", problem));
    }

    private void send(Context ctx) throws IOException {
        List<UploadedFile> sent = FormEncoding.files(ctx, "file");
        Optional<SheetKind> kind = SheetKind.of(ctx.formParam("kind"));
        if (sent.isEmpty() || kind.isEmpty()) {
            list(ctx, 422, w("import.nothing-sent"));
            return;
        }
        Entry entry;
        try (InputStream bytes = sent.get(0).content()) {
            entry = folder.keep(site.clock().instant(), kind.get(), sent.get(0).filename(), bytes);
        }
        try {
            SheetHead.of(SheetFile.of(folder.sheet(entry)), kind.get());
        } catch (IllegalArgumentException e) {
            folder.discard(entry);
            list(ctx, 422, Words.sentence(e));
            return;
        }
        ctx.redirect("/import/" + entry.id(), HttpStatus.SEE_OTHER);
    }

    /**
     * A column of the page.
     *
     * @param sample what its first cells have
     * @param path of the field; empty where it is not brought in
     * @param gaps whether to ask about empty cells below filled ones
     * @param twoReadings whether to ask about the order of day and month
     */
    public record ColumnView(
            int at, String heading, String sample, String path, Chosen chosen, boolean gaps, boolean twoReadings) {}

    private void columns(Context ctx, int status, Entry entry, String problem) {
        SheetHead head = SheetHead.of(SheetFile.of(folder.sheet(entry)), entry.kind());
        ColumnProposal proposal = new ColumnProposal(entry.kind(), head);
        ColumnPlan remembered = folder.remembered(head.digest(entry.kind()));
        ColumnPlan plan = status == 200 ? remembered == null ? proposal.plan() : remembered : typed(ctx);
        List<ColumnView> columns = new ArrayList<>();
        for (int i = 0; i < head.headings().size(); i++) {
            int at = i;
            Optional<Chosen> chosen =
                    plan.columns().stream().filter(each -> each.at() == at).findFirst();
            Chosen shown = chosen.orElse(new Chosen(at, "", "", DayOrder.NOT_SAID, false));
            String sample = head.sample().stream()
                    .map(row -> row.cell(at).strip())
                    .filter(cell -> !cell.isEmpty())
                    .limit(3)
                    .collect(Collectors.joining(" · "));
            columns.add(new ColumnView(
                    at,
                    head.headings().get(i),
                    sample,
                    shown.path(),
                    shown,
                    proposal.hasGaps(shown),
                    proposal.twoReadings(shown)));
        }
        ctx.status(status);
        Html.show(
                ctx,
                "import-columns",
                Map.of(
                        "page", site.page(ctx, w("import.columns-of", "file", entry.name()), "studio"),
                        "entry", entry,
                        "columns", columns,
                        "remembered", remembered != null,
                        "problem", problem));
    }

    private static ColumnPlan typed(Context ctx) {
        List<Chosen> chosen = new ArrayList<>();
        for (int at = 0; ctx.formParam("field." + at) != null; at++) {
            String path = String.valueOf(ctx.formParam("field." + at));
            if (!path.isEmpty()) {
                String order = Optional.ofNullable(ctx.formParam("order." + at)).orElse("");
                chosen.add(new Chosen(
                        at,
                        path,
                        Optional.ofNullable(ctx.formParam("unit." + at))
                                .orElse("")
                                .strip(),
                        order.equals("day")
                                ? DayOrder.DAY_FIRST
                                : order.equals("month") ? DayOrder.MONTH_FIRST : DayOrder.NOT_SAID,
                        ctx.formParam("above." + at) != null));
            }
        }
        return new ColumnPlan(chosen);
    }

    private void judge(Context ctx) throws IOException {
        Entry entry = entry(ctx)
                .with(new ImportChoices(
                        !"leave".equals(ctx.formParam("existing")), "new".equals(ctx.formParam("people"))));
        judge(ctx, entry, typed(ctx));
    }

    /** Judges the rows anew with the other choice for people of whom nobody is recorded. */
    private void people(Context ctx) throws IOException {
        Entry entry = entry(ctx);
        ColumnPlan plan = remembered(entry);
        if (plan == null || !entry.waits()) {
            ctx.redirect("/import/" + entry.id(), HttpStatus.SEE_OTHER);
            return;
        }
        boolean fresh = "new".equals(ctx.formParam("people"));
        judge(ctx, entry.with(new ImportChoices(entry.choices().update(), fresh)), plan);
    }

    private @Nullable ColumnPlan remembered(Entry entry) {
        return folder.remembered(
                SheetHead.of(SheetFile.of(folder.sheet(entry)), entry.kind()).digest(entry.kind()));
    }

    private void judge(Context ctx, Entry entry, ColumnPlan plan) throws IOException {
        SheetImport sheet;
        try {
            sheet = new SheetImport(site.archive(), folder.sheet(entry), entry.kind(), plan, entry.choices());
            folder.remember(
                    SheetHead.of(SheetFile.of(folder.sheet(entry)), entry.kind())
                            .digest(entry.kind()),
                    plan);
        } catch (IllegalArgumentException e) {
            columns(ctx, 422, entry, Words.sentence(e));
            return;
        }
        folder.save(entry);
        Conventions reader = Words.conventions();
        start(ctx, w("import.judging-title", "file", entry.name()), progress -> {
            SheetImport.Counts counts;
            try (BufferedWriter out = Files.newBufferedWriter(folder.verdicts(entry))) {
                counts = sheet.judge(progress, row -> line(out, row, reader));
            }
            return new Job.Outcome(
                    SheetImport.summary(counts, true).in(reader), List.of(), "/import/" + entry.id() + "/rows");
        });
    }

    private void start(Context ctx, String title, tenterbook.web.job.Jobs.Work work) {
        Job job = site.jobs().start(title, work);
        ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
    }

    private static void line(BufferedWriter out, JudgedRow<?> row, Conventions reader) {
        String why = row.why().stream().map(each -> each.in(reader)).collect(Collectors.joining(" "));
        try {
            out.write(row.row() + "\t" + row.verdict() + "\t" + row.id().replaceAll("\\s", " ") + "\t"
                    + why.replaceAll("[\\t\\r\\n]", " ") + "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void rows(Context ctx) throws IOException {
        Entry entry = entry(ctx);
        if (!Files.exists(folder.verdicts(entry))) {
            ctx.redirect("/import/" + entry.id(), HttpStatus.SEE_OTHER);
            return;
        }
        RowsView view = RowsView.read(folder.verdicts(entry), ctx.queryParam("show"), ctx.queryParam("page"));
        ColumnPlan plan = entry.waits() ? remembered(entry) : null;
        boolean people = plan != null
                && plan.columns().stream()
                        .anyMatch(each -> entry.kind()
                                .column(each.path())
                                .filter(SheetColumn::person)
                                .isPresent());
        Html.show(
                ctx,
                "import-rows",
                Map.of(
                        "page",
                        site.page(ctx, w("import.rows-of", "file", entry.name()), "studio"),
                        "entry",
                        entry,
                        "people",
                        people,
                        "view",
                        view));
    }

    private void write(Context ctx) throws IOException {
        Entry waiting = entry(ctx);
        ColumnPlan plan = remembered(waiting);
        if (plan == null || !waiting.waits()) {
            ctx.redirect("/import/" + waiting.id(), HttpStatus.SEE_OTHER);
            return;
        }
        SheetImport sheet =
                new SheetImport(site.archive(), folder.sheet(waiting), waiting.kind(), plan, waiting.choices());
        int all = RowsView.read(folder.verdicts(waiting), null, null).total();
        Entry begun = waiting.begun(site.ledger().lastSequence());
        folder.save(begun);
        Conventions reader = Words.conventions();
        start(ctx, w("import.writing-title", "file", begun.name()), progress -> {
            List<String> refused = new ArrayList<>();
            SheetImport.Counts counts = sheet.write(begun.id(), all, progress, row -> {
                if (refused.size() < RowsView.SIZE) {
                    row.why()
                            .forEach(why -> refused.add(Message.of("import.row", "row", row.row(), "sentence", why)
                                    .in(reader)));
                }
            });
            String summary = SheetImport.summary(counts, false).in(reader);
            folder.save(begun.over(summary));
            folder.forgetSheet(begun);
            return new Job.Outcome(summary, refused, "/import");
        });
    }

    private void undo(Context ctx) throws IOException {
        Entry entry = entry(ctx);
        if (entry.undone()) {
            FlashMessage.andGo(ctx, entry.summary(), "/import");
            return;
        }
        Conventions reader = Words.conventions();
        start(ctx, w("import.undo-title", "file", entry.name()), progress -> {
            ImportUndo.Report report =
                    ImportUndo.undo(site.archive(), entry.id(), Math.max(0, entry.after()), progress);
            String summary = report.summary().in(reader);
            folder.save(report.left().isEmpty() ? entry.takenBack(summary) : entry.over(summary));
            return new Job.Outcome(
                    summary, report.left().stream().map(each -> each.in(reader)).toList(), "/import");
        });
    }
}
