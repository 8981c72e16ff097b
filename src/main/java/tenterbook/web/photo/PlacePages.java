package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.measure.NumberWords;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.colour.SearchTolerance;
import tenterbook.web.form.Form;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/**
 * The colour at a place in a photograph, and the pieces of that colour. A place is touched on the picture, which is an image
 * button of a form (HTML Standard, 4.10.5.1.19) and needs no script, or typed in percent.
 */
public final class PlacePages {
    /** Width of the picture that is a button, in CSS pixels: the browser says where in these it was touched. */
    public static final int WIDE = 280;

    private final Site site;
    private final PhotoMeasuring measuring;

    public PlacePages(Site site, PhotoMeasuring measuring) {
        this.site = site;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/{number}/photos/{digest}/place", this::place);
    }

    /**
     * @param tall height of the picture that is a button
     * @param found null where no place was named
     */
    public record PlaceView(
            Piece piece,
            PiecePhoto shot,
            Photo photo,
            int tall,
            @Nullable Found found,
            Form typed) {}

    /**
     * The colour at a place.
     *
     * @param across percent of the picture's width
     * @param down percent of its height
     * @param cloth whether it lies within the outline of the cloth; null where there is no outline
     * @param within the tolerance of the search, ΔE00
     */
    public record Found(
            double across,
            double down,
            ColourBand.Swatch swatch,
            MeasuredColour measured,
            @Nullable Boolean cloth,
            double within) {
        /** The address of the search; what is not cloth is looked for in whole photographs. */
        public String search() {
            return "/?colour=" + swatch.query() + "&within="
                    + NumberWords.plain(within).inEnglish() + (Boolean.FALSE.equals(cloth) ? "&in=photograph" : "");
        }
    }

    private void place(Context ctx) throws IOException {
        Saved<Piece> saved = site.saved(Kinds.PIECE, ctx.pathParam("number"));
        Digest digest = PhotoPages.digest(ctx);
        PiecePhoto shot = PhotoPages.shot(saved.record(), digest);
        Photo photo = site.ledger()
                .find(Kinds.PHOTO, digest.hex())
                .map(Saved::record)
                .filter(Photo::viewable)
                .orElseThrow(() -> new NotFound(Message.of("not-here.picture-to-measure", "name", digest.brief())));
        int tall = photo.width() == null || photo.height() == null
                ? WIDE
                : Math.max(1, Math.round((float) WIDE * photo.height() / photo.width()));
        Form typed = touched(Form.of(ctx.queryParamMap()), tall);
        Found found = typed.has("across") || typed.has("down") ? found(photo, typed) : null;
        if (typed.hasProblems()) {
            ctx.status(422);
        }
        Map<String, Object> values = new HashMap<>();
        values.put("view", new PlaceView(saved.record(), shot, photo, tall, found, typed));
        if ("place-found".equals(ctx.header("HX-Target")) && found != null) {
            Html.show(ctx, "part/place", Map.of("found", found));
        } else {
            values.put(
                    "page",
                    site.page(ctx, w("titles.place", "piece", saved.record().shown()), "pieces"));
            Html.show(ctx, "place", values);
        }
    }

    /** The same with the place that was touched, if one was; a button that was pressed by a key says it was touched at 0, 0. */
    private static Form touched(Form typed, int tall) {
        String x = typed.text("at.x");
        String y = typed.text("at.y");
        boolean touched = x.matches("\\d{1,4}") && y.matches("\\d{1,4}") && !(x.equals("0") && y.equals("0"));
        return touched
                ? typed.put("across", percent(Integer.parseInt(x), WIDE))
                        .put("down", percent(Integer.parseInt(y), tall))
                : typed;
    }

    private static String percent(int pixels, int of) {
        return NumberWords.decimals(Math.min(100, 100.0 * (pixels + 0.5) / of), 1)
                .inEnglish();
    }

    private @Nullable Found found(Photo photo, Form typed) throws IOException {
        double across = part(typed, "across");
        double down = part(typed, "down");
        if (typed.hasProblems()) {
            return null;
        }
        MeasuredColour measured = measuring.place(photo.digest(), across, down);
        SeenCloth seen = site.archive().cloths().of(photo);
        return new Found(
                100 * across,
                100 * down,
                ColourBand.swatch(measured.lab(), "", 1, 0),
                measured,
                seen.outline().edge().found() ? new Region(seen.outline().corners()).contains(across, down) : null,
                SearchTolerance.of(measured.likelyError()));
    }

    private static double part(Form typed, String field) {
        String text = typed.text(field).replace(',', '.');
        if (!text.matches("\\d{1,3}([.]\\d{1,9})?") || Double.parseDouble(text) > 100) {
            typed.problem(field, w("place.no-place", "found", typed.text(field)));
            return 0;
        }
        return Double.parseDouble(text) / 100;
    }
}
