package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.FileNames;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillReferenced;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;
import tenterbook.web.record.TypedNumber;

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
     * @param proposals numbers of pieces that stand in its file name
     */
    public record WaitingPhoto(
            Form form, Photo photo, String day, boolean firstOfDay, String time, List<String> proposals) {}

    /** @param ticked whether proposals are ticked beforehand, because the maker asked for that */
    public record WaitingView(
            List<WaitingPhoto> rows,
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
        return site.archive().ledger().unnamed(Kinds.PHOTO, Kinds.PIECE).stream()
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
        List<WaitingPhoto> rows = new ArrayList<>();
        String last = "";
        for (int i = 0; i < some.size(); i++) {
            Photo photo = some.get(i);
            Form row = Optional.ofNullable(before.get(photo.digest().hex()))
                    .orElseGet(() -> Form.empty().row("photos", rows.size()));
            String day = photo.taken().isEmpty()
                    ? w("giving.not-known-when")
                    : photo.taken().substring(0, 10);
            String time =
                    photo.taken().isEmpty() ? "" : photo.taken().substring(11).replaceAll("^(\\d\\d:\\d\\d).*", "$1");
            rows.add(new WaitingPhoto(row, photo, day, !day.equals(last), time, numbers.get(photo.originalName())));
            last = day;
        }
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("titles.waiting"), "record"));
        values.put(
                "view",
                new WaitingView(rows, all.size(), number, pages, ticked, typed.hasProblems(), typed.problem("photos")));
        values.put("roles", Choices.words(PhotoRole.values()));
        ctx.status(status);
        Html.show(ctx, "waiting", values);
    }

    /** A photograph, the piece the maker gives it to, and how. */
    private record Gift(Digest photo, String piece, PhotoRole role, int state) {}

    private void give(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        List<Gift> gifts = new ArrayList<>();
        List<Digest> aside = new ArrayList<>();
        for (Form row : form.rows("photos")) {
            read(row, gifts, aside);
        }
        if (form.hasProblems()) {
            show(ctx, 422, form, number(ctx.formParam("page")));
            return;
        }
        if (gifts.isEmpty() && aside.isEmpty()) {
            FlashMessage.andGo(ctx, w("giving.nothing-chosen"), "/photos/waiting");
            return;
        }
        Map<String, List<Gift>> byPiece =
                gifts.stream().collect(Collectors.groupingBy(Gift::piece, LinkedHashMap::new, Collectors.toList()));
        List<Digest> gone = new ArrayList<>();
        try {
            site.archive().ledger().write(site.author(), act -> {
                byPiece.forEach((piece, its) -> add(act, piece, its));
                for (Digest photo : aside) {
                    site.archive()
                            .ledger()
                            .find(Kinds.PHOTO, photo.hex())
                            .ifPresentOrElse(
                                    found -> act.withdraw(
                                            Kinds.PHOTO, photo.hex(), found.version(), w("giving.set-aside-note")),
                                    () -> gone.add(photo));
                }
                return null;
            });
        } catch (Conflict | StillReferenced e) {
            // In another window a photograph was given or set aside meanwhile; what was typed for the others stays.
            form.problem("photos", Words.sentence(e));
            show(ctx, 409, form, number(ctx.formParam("page")));
            return;
        }
        FlashMessage.andGo(ctx, sentence(byPiece, gifts.size(), aside.size() - gone.size()), "/photos/waiting");
    }

    private static String sentence(Map<String, List<Gift>> byPiece, int given, int aside) {
        List<String> parts = new ArrayList<>();
        if (given > 0) {
            parts.add(w(
                    "giving.gave",
                    "photographs",
                    given,
                    "many",
                    byPiece.size() > 8,
                    "pieces",
                    byPiece.size(),
                    "numbers",
                    String.join(", ", byPiece.keySet())));
        }
        if (aside > 0) {
            parts.add(w("giving.set-aside", "count", aside));
        }
        return parts.isEmpty() ? w("giving.set-aside-before") : String.join(" ", parts);
    }

    private Optional<Piece> piece(String typed) {
        return TypedNumber.piece(site.archive(), typed);
    }

    private void read(Form row, List<Gift> gifts, List<Digest> aside) {
        String typed = row.text("number");
        String proposed = row.text("proposed");
        boolean putAside = row.checked("aside");
        if (typed.isEmpty() && proposed.isEmpty() && !putAside) {
            return;
        }
        Digest digest;
        try {
            digest = new Digest(row.text("digest"));
        } catch (IllegalArgumentException e) {
            row.problem("number", w("giving.which-photograph"));
            return;
        }
        if (putAside) {
            if (typed.isEmpty() && proposed.isEmpty()) {
                aside.add(digest);
            } else {
                row.problem("number", w("giving.not-both"));
            }
            return;
        }
        if (!typed.isEmpty() && !proposed.isEmpty() && !piece(typed).equals(piece(proposed))) {
            row.problem("number", w("giving.two-numbers", "proposed", proposed, "typed", typed));
            return;
        }
        Optional<Piece> piece = piece(typed.isEmpty() ? proposed : typed);
        if (piece.isEmpty()) {
            row.problem("number", w("not-here.piece", "id", typed.isEmpty() ? proposed : typed));
            return;
        }
        String number = piece.get().number().value();
        int states = Math.max(1, piece.get().state());
        Integer state = row.wholeNumber("state");
        if (state == null && states > 1) {
            row.problem("state", w("giving.which-state", "piece", number, "states", states));
        } else if (state != null && (state < 1 || state > states)) {
            row.problem("state", w("giving.states", "piece", number, "states", states));
        } else {
            PhotoRole role = row.choice("role", PhotoRole.values());
            gifts.add(new Gift(digest, number, role, state == null ? 1 : state));
        }
    }

    private void add(LedgerTransaction act, String number, List<Gift> gifts) {
        Saved<Piece> saved = site.saved(Kinds.PIECE, number);
        List<PiecePhoto> photos = new ArrayList<>(saved.record().photos());
        for (Gift gift : gifts) {
            boolean there = photos.stream().anyMatch(photo -> photo.photo().equals(gift.photo()));
            if (!there) {
                photos.add(new PiecePhoto(gift.photo(), gift.role(), "", gift.state(), List.of()));
            }
        }
        act.save(Kinds.PIECE, saved.record().withPhotos(photos), saved.version(), w("giving.given-note"));
    }
}
