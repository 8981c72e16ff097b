package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.facts.Colours;
import tenterbook.imaging.UnkeptPicture;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.colour.SearchTolerance;
import tenterbook.web.found.ViewChoice;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.recognition.RunningRecognitions;
import tenterbook.web.recognition.SentPicture;
import tenterbook.words.Refusal;

/** Searching by the colours of a picture that is sent for that alone; it is not kept. */
public final class PictureSearchPages {
    private final Site site;
    private final PieceListPages list;
    private final RunningRecognitions running;

    public PictureSearchPages(Site site, PieceListPages list, RunningRecognitions running) {
        this.site = site;
        this.list = list;
        this.running = running;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/by-picture", ctx -> show(ctx, null, ""));
        routes.post("/by-picture", this::search);
        routes.post("/api/colour/picture", this::answer);
    }

    /**
     * A picture that was looked at.
     *
     * @param within the tolerance of the searches, ΔE00
     * @param colours each with the address that searches by it; the first is searched by where it is the cloth's
     */
    public record PictureView(UnkeptPicture seen, double within, List<Found> colours) {
        /** The picture itself, since it is not kept. */
        public String data() {
            return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(seen.preview());
        }

        /** Corners as SVG reads them, in parts of the picture. */
        public String points(List<Corner> corners) {
            StringBuilder points = new StringBuilder();
            corners.forEach(corner -> points.append(String.format(Locale.ROOT, "%.4f,%.4f ", corner.x(), corner.y())));
            return points.toString().strip();
        }

        public boolean calibrated() {
            return seen.card() != null;
        }

        public boolean ofCloth() {
            return seen.outline().edge().found();
        }
    }

    /** @param chosen whether the pieces shown are those near it */
    public record Found(ColourBand.Swatch swatch, double share, String search, boolean chosen) {}

    private void search(Context ctx) throws IOException {
        UnkeptPicture seen;
        try {
            seen = SentPicture.of(ctx);
        } catch (PhotoRefused | Refusal e) {
            ctx.status(422);
            show(ctx, null, Words.sentence(e));
            return;
        }
        double within = SearchTolerance.of(seen.correction().likelyError());
        boolean cloth = seen.outline().edge().found();
        List<PaletteColour> colours = counted(seen);
        List<Found> found = colours.stream()
                .map(each -> new Found(
                        ColourBand.swatch(each.colour(), "", each.share(), 0),
                        each.share(),
                        SearchLinks.address("/", query(each.colour(), within, !cloth)),
                        cloth && each.equals(colours.get(0))))
                .toList();
        show(ctx, new PictureView(seen, within, found), "");
    }

    /** Its colours without dust and seams, as with pieces. */
    private static List<PaletteColour> counted(UnkeptPicture seen) {
        return seen.colours().stream()
                .filter(each -> each.share() >= Colours.LEAST_SHARE)
                .toList();
    }

    private static PieceQuery query(Lab colour, double within, boolean picture) {
        return PieceQuery.EVERYTHING.withColours(new ColourChoice(List.of(colour), Map.of(), "", within, 0, picture));
    }

    private void show(Context ctx, @Nullable PictureView picture, String problem) {
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("titles.by-picture"), "pieces"));
        values.put("picture", picture);
        values.put("problem", problem);
        values.put("view", null);
        values.put("run", picture == null ? null : running.start(picture.seen().pixels(), null));
        if (picture != null && picture.ofCloth() && !picture.colours().isEmpty()) {
            PieceQuery query = query(picture.colours().get(0).swatch().colour(), picture.within(), false);
            values.put("view", list.view(query, ViewChoice.USUAL, "", query.toParameters()));
        }
        Html.show(ctx, "by-picture", values);
    }

    /** What is seen on a picture; see {@code web/openapi.json}. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Answer(
            String edge,
            List<Corner> outline,
            boolean calibrated,
            @Nullable List<Corner> card,
            @Nullable Double likelyError,
            double within,
            String of,
            List<ColourAnswer> colours) {}

    record ColourAnswer(LabAnswer colour, String words, double share, String search) {}

    record LabAnswer(double lightness, double a, double b, String illuminant, String observer) {}

    private void answer(Context ctx) throws IOException {
        UnkeptPicture seen = SentPicture.of(ctx);
        Double error = seen.correction().likelyError();
        double within = SearchTolerance.of(error);
        boolean cloth = seen.outline().edge().found();
        ctx.json(new Answer(
                seen.outline().edge().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                seen.outline().corners(),
                seen.card() != null,
                seen.card() == null ? null : seen.card().corners(),
                error,
                within,
                cloth ? "cloth" : "photograph",
                counted(seen).stream()
                        .map(each -> new ColourAnswer(
                                lab(each.colour()),
                                ColourWords.of(each.colour()),
                                each.share(),
                                SearchLinks.address("/api/pieces", query(each.colour(), within, !cloth))))
                        .toList()));
    }

    private static LabAnswer lab(Lab colour) {
        return new LabAnswer(
                colour.lightness(), colour.a(), colour.b(), WhitePoint.D65.name(), MeasuredColour.TWO_DEGREES);
    }
}
