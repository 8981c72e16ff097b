package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.FileNames;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillReferenced;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;

/** Photographs that no piece shows yet, and giving them to pieces, which only the maker decides. */
public final class WaitingPages {
    private static final int EACH_PAGE = 40;
    private static final Comparator<String> UNKNOWN_LAST =
            Comparator.comparing(String::isEmpty).thenComparing(Comparator.naturalOrder());

    private final Site site;

    public WaitingPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/photos/waiting", ctx -> show(ctx, 200, Form.empty(), number(ctx.queryParam("page"))));
        routes.post("/photos/waiting", this::give);
    }

    /**
     * One photograph.
     *
     * @param form of its row: what was typed, and what is wrong with it
     * @param day it was taken, or words that this is not known
     * @param firstOfDay whether the day is shown above it
     * @param finished numbers of pieces that were finished on that day, where it is shown
     * @param proposals numbers of pieces in its file name
     * @param group which group of photographs taken together it belongs to, from 0; -1 for none
     * @param together how many there are in the group where it begins with this one, else 0
     */
    public record WaitingPhoto(
            Form form,
            Photo photo,
            String day,
            boolean firstOfDay,
            List<String> finished,
            String time,
            List<String> proposals,
            int group,
            int together) {}

    /**
     * @param form as it was typed
     * @param ticked whether proposals are ticked beforehand, because the maker asked for that
     */
    public record WaitingView(
            List<WaitingPhoto> rows,
            Form form,
            int total,
            int number,
            int pages,
            boolean ticked,
            boolean troubled,
            String conflict) {}

    private static int number(String text) {
        return text != null && text.matches("\\d{1,6}") ? Math.max(1, Integer.parseInt(text)) : 1;
    }

    private List<Photo> waiting() {
        return site.archive().ledger().unreferenced(Kinds.PHOTO, Kinds.PIECE).stream()
                .map(Saved::record)
                .sorted(Comparator.comparing(Photo::taken, UNKNOWN_LAST)
                        .thenComparing(Photo::originalName, UNKNOWN_LAST)
                        .thenComparing(photo -> photo.digest().hex()))
                .toList();
    }

    private void show(Context ctx, int status, Form typed, int page) {
        List<Photo> all = waiting();
        int pages = Math.max(1, (all.size() + EACH_PAGE - 1) / EACH_PAGE);
        int number = Math.min(page, pages);
        List<Photo> some = all.stream()
                .skip((long) (number - 1) * EACH_PAGE)
                .limit(EACH_PAGE)
                .toList();
        Map<String, Form> before = typed.rows("photos").stream()
                .collect(Collectors.toMap(row -> row.text("digest"), row -> row, (one, twin) -> one));
        Map<String, List<String>> numbers = FileNames.numbers(
                site.archive().ledger(),
                some.stream().map(Photo::originalName).distinct().toList());
        boolean ticked = ctx.queryParam("ticked") != null;
        List<TakenTogether> groups = TakenTogether.among(some);
        List<WaitingPhoto> rows = new ArrayList<>();
        String last = "";
        for (int i = 0; i < some.size(); i++) {
            Photo photo = some.get(i);
            Form row = Optional.ofNullable(before.get(photo.digest().hex()))
                    .orElseGet(() -> Form.empty().row("photos", rows.size()));
            String day = photo.taken().isEmpty()
                    ? w("giving.not-known-when")
                    : photo.taken().substring(0, 10);
            boolean firstOfDay = !day.equals(last);
            int group = group(groups, i);
            rows.add(new WaitingPhoto(
                    row,
                    photo,
                    day,
                    firstOfDay,
                    firstOfDay && !photo.taken().isEmpty() ? finishedOn(day) : List.of(),
                    time(photo),
                    numbers.get(photo.originalName()),
                    group,
                    group >= 0 && groups.get(group).first() == i
                            ? groups.get(group).count()
                            : 0));
            last = day;
        }
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("titles.waiting"), "record"));
        values.put(
                "view",
                new WaitingView(
                        rows, typed, all.size(), number, pages, ticked, typed.hasProblems(), typed.problem("photos")));
        values.put("roles", Choices.words(PhotoRole.values()));
        ctx.status(status);
        Html.show(ctx, "waiting", values);
    }

    private static int group(List<TakenTogether> groups, int photo) {
        return IntStream.range(0, groups.size())
                .filter(group -> groups.get(group).has(photo))
                .findFirst()
                .orElse(-1);
    }

    private static String time(Photo photo) {
        return photo.taken().isEmpty() ? "" : photo.taken().substring(11).replaceAll("^(\\d\\d:\\d\\d).*", "$1");
    }

    /** Numbers of pieces of which the day is recorded, not only the month or the year. */
    private List<String> finishedOn(String day) {
        List<String> possible = site.index().search(PieceQuery.of(Map.of("finished", List.of(day)))).hits().stream()
                .map(hit -> hit.card().number())
                .toList();
        LocalDate only = LocalDate.parse(day);
        return site.ledger().records(Kinds.PIECE, possible).values().stream()
                .filter(piece -> only.equals(piece.finished().from())
                        && only.equals(piece.finished().to()))
                .map(piece -> piece.shown().value())
                .sorted()
                .toList();
    }

    private void give(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        GivenPhotos given = GivenPhotos.read(site.archive(), form);
        if (form.hasProblems()) {
            show(ctx, 422, form, number(ctx.formParam("page")));
            return;
        }
        if (given.nothing()) {
            FlashMessage.andGo(ctx, w("giving.nothing-chosen"), "/photos/waiting");
            return;
        }
        List<Digest> gone;
        try {
            gone = site.write(given::write);
        } catch (Conflict | StillReferenced e) {
            // In another window a photograph was given or set aside meanwhile; what was typed for the others stays.
            form.problem("photos", Words.sentence(e));
            show(ctx, 409, form, number(ctx.formParam("page")));
            return;
        }
        FlashMessage.andGo(ctx, sentence(given, given.aside().size() - gone.size()), "/photos/waiting");
    }

    private static String sentence(GivenPhotos all, int aside) {
        List<String> parts = new ArrayList<>();
        Set<String> pieces = all.byPiece().keySet();
        if (!pieces.isEmpty()) {
            parts.add(w(
                    "giving.gave",
                    "photographs",
                    all.byPiece().values().stream().mapToInt(List::size).sum(),
                    "many",
                    pieces.size() > 8,
                    "pieces",
                    pieces.size(),
                    "numbers",
                    String.join(", ", pieces)));
        }
        if (aside > 0) {
            parts.add(w("giving.set-aside", "count", aside));
        }
        return parts.isEmpty() ? w("giving.set-aside-before") : String.join(" ", parts);
    }
}
