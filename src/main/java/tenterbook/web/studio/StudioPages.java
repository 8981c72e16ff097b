package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.Difference;
import tenterbook.archive.record.StoredCodes;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.Bag;
import tenterbook.exchange.Pack;
import tenterbook.labelling.rule.Language;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.DateText;
import tenterbook.measure.DateWords;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.PartialDate;
import tenterbook.piece.EarlierStudio;
import tenterbook.piece.Studio;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.form.RecordForm;
import tenterbook.web.job.Job;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;
import tenterbook.web.record.RecordFormView;
import tenterbook.words.Conventions;
import tenterbook.words.Message;

/** The studio's particulars, and long work on the archive: check, re-index, pack. */
public final class StudioPages {
    private final Site site;
    private final RecordForm<Studio> forms;
    private final @Nullable CloseButton close;

    /** @param close null where the program is ended otherwise */
    public StudioPages(Site site, @Nullable CloseButton close) {
        this.site = site;
        this.close = close;
        this.forms = new Forms(site::currency).studio();
    }

    public void routes(RoutesConfig routes) {
        routes.get("/studio", ctx -> show(ctx, 200, null, List.of(), ""));
        routes.post("/studio", this::save);
        routes.post(
                "/studio/check",
                ctx -> go(ctx, w("studio.checking"), (progress, reader) -> {
                    List<Finding> findings = ArchiveCheck.run(
                            site.archive(), progress, () -> site.index().check(progress));
                    return new Job.Outcome(
                            Message.of("studio.checked", "findings", findings.size())
                                    .in(reader),
                            Finding.listed(findings).stream()
                                    .map(line -> line.in(reader))
                                    .toList(),
                            "");
                }));
        routes.post(
                "/studio/reindex",
                ctx -> go(ctx, w("studio.reindexing"), (progress, reader) -> {
                    site.index().reindex(progress);
                    return new Job.Outcome(Message.of("studio.reindexed").in(reader), List.of(), "");
                }));
        new BackupPages(site).routes(routes);
        if (close != null) {
            close.routes(routes);
        }
        routes.post("/studio/pack", ctx -> {
            Path root = site.archive().folder().root().toAbsolutePath().normalize();
            String name = root.getFileName() + "-" + site.today();
            Path beside = root.resolveSibling(name);
            // A read-only disk has no room for the bag.
            Path target = free(
                    Files.isWritable(beside.getParent()) ? beside : Path.of(System.getProperty("user.home"), name));
            go(ctx, w("studio.packing"), (progress, reader) -> {
                Bag bag = new Pack(site.clock()).pack(site.archive(), target, progress);
                return new Job.Outcome(
                        Message.of("studio.packed", "folder", target).in(reader),
                        bag.notes().stream().map(Finding::toString).toList(),
                        List.of(),
                        "");
            });
        });
    }

    private static Path free(Path wanted) {
        Path path = wanted;
        for (int i = 2; Files.exists(path); i++) {
            path = wanted.resolveSibling(wanted.getFileName() + "-" + i);
        }
        return path;
    }

    /** Work with an outcome in the language of the person who started it. */
    @FunctionalInterface
    private interface Work {
        Job.Outcome run(Progress progress, Conventions reader) throws Exception;
    }

    private void go(Context ctx, String title, Work work) {
        Conventions reader = Words.conventions();
        Job job = site.jobs().start(title, progress -> work.run(progress, reader));
        ctx.redirect("/work/" + job.id(), io.javalin.http.HttpStatus.SEE_OTHER);
    }

    private void show(Context ctx, int status, Form typed, List<Difference> theirs, String trouble) {
        Saved<Studio> saved = site.ledger().find(Kinds.STUDIO, Kinds.THE_STUDIO).orElse(null);
        Studio studio = saved == null ? Studio.UNNAMED : saved.record();
        Form form = typed == null ? forms.filled(studio) : typed;
        boolean begun = saved != null || site.ledger().count(Kinds.BOARD_PAIR) > 0;
        if (typed == null && !begun) {
            form.put("lengths", LengthUnits.CENTIMETRES.code());
        }
        int version = form.version(typed != null || saved == null ? 0 : saved.version());
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("page.menu.studio"), "studio"));
        values.put(
                "view",
                new RecordFormView(
                        form, Kinds.THE_STUDIO, version, "/studio", "studio/studio", null, theirs, trouble, null));
        values.put(
                "folder",
                site.archive().folder().root().toAbsolutePath().normalize().toString());
        values.put(
                "languages",
                Language.all().stream()
                        .map(language -> new Choices.Choice(language.tag(), language.name()))
                        .toList());
        values.put(
                "terms",
                Language.terms().stream()
                        .map(term -> new Choices.Choice(term, ""))
                        .toList());
        values.put("answers", studio.selling().answers());
        values.put("dateOrders", dateOrders());
        values.put("lengths", Choices.lengthUnits());
        values.put(
                "zones",
                ZoneId.getAvailableZoneIds().stream()
                        .filter(zone -> zone.contains("/") && !zone.startsWith("Etc/") && !zone.startsWith("SystemV/"))
                        .sorted()
                        .map(zone -> new Choices.Choice(zone, ""))
                        .toList());
        values.put(
                "built",
                Finding.listed(ArchiveCheck.atStart(site.archive())).stream()
                        .map(line -> line.in(Words.conventions()))
                        .toList());
        values.put("closable", close != null);
        values.put("backup", new BackupPages(site).view());
        values.put("revisions", site.ledger().lastSequence());
        values.put("lastHash", site.ledger().lastHash().hex());
        ctx.status(status);
        Html.show(ctx, "studio", values);
    }

    /** Each order by an example, whose day and month cannot be mistaken for each other. */
    private static List<Choices.Choice> dateOrders() {
        Conventions usual = Words.conventions();
        return Arrays.stream(Conventions.DateOrder.values())
                .map(order -> new Choices.Choice(
                        StoredCodes.DATE_ORDER.code(order),
                        DateWords.day(LocalDate.of(2024, 3, 14))
                                .in(new Conventions(usual.language(), usual.decimalMark(), order, usual.zone()))))
                .toList();
    }

    /**
     * With the former particulars kept, where they changed.
     *
     * @return null where it is not known since when; the form then asks
     */
    private @Nullable Studio dated(Form form, Studio typed) {
        Studio old = site.ledger()
                .find(Kinds.STUDIO, Kinds.THE_STUDIO)
                .map(Saved::record)
                .orElse(Studio.UNNAMED);
        if (form.checked("correction") || !changed(old, typed) || site.ledger().count(Kinds.PIECE) == 0) {
            return typed;
        }
        form.put("asked", "1");
        PartialDate since = form.read("since", PartialDate.UNRECORDED, DateText::read);
        if (form.hasProblems()) {
            return null;
        }
        if (!since.known()) {
            form.problem("since", w(since.recorded() ? "studio.since-not-known" : "studio.since-missing"));
            return null;
        }
        return typed.after(old.until(since));
    }

    /** Whether particulars that were recorded are others now. */
    private static boolean changed(Studio old, Studio typed) {
        EarlierStudio before = old.until(PartialDate.UNRECORDED);
        EarlierStudio now = typed.until(PartialDate.UNRECORDED);
        return Stream.<Function<EarlierStudio, String>>of(
                        EarlierStudio::name, EarlierStudio::maker, EarlierStudio::place, EarlierStudio::dyedIn)
                .anyMatch(each ->
                        !each.apply(before).isEmpty() && !each.apply(before).equals(each.apply(now)));
    }

    private void save(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        if (form.rearranged()) {
            show(ctx, 200, form, List.of(), "");
            return;
        }
        Studio old = site.ledger()
                .find(Kinds.STUDIO, Kinds.THE_STUDIO)
                .map(Saved::record)
                .orElse(null);
        Studio read = forms.read(form, old);
        Studio studio = read == null ? null : dated(form, read);
        if (studio == null) {
            show(ctx, 422, form, List.of(), "");
            return;
        }
        try {
            int version = form.version(0);
            site.write(act -> act.save(Kinds.STUDIO, studio, version, ""));
            FlashMessage.andGo(ctx, w("studio.saved"), "/studio");
        } catch (Conflict e) {
            Saved<Studio> theirs =
                    site.ledger().find(Kinds.STUDIO, Kinds.THE_STUDIO).orElseThrow(() -> e);
            form.put("version", theirs.version());
            show(ctx, 409, form, Difference.between(forms.part(), theirs.record(), studio), Words.sentence(e));
        } catch (ArchiveProblem e) {
            show(ctx, 500, form, List.of(), Words.sentence(e));
        }
    }
}
