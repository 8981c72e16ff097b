package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.colour.compare.Alignment;
import tenterbook.colour.compare.ChangeWords;
import tenterbook.colour.compare.ComparedPicture;
import tenterbook.colour.compare.Fading;
import tenterbook.colour.compare.RegionChange;
import tenterbook.colour.compare.Registration;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Decimals;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.colour.space.Srgb;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.StatedError;
import tenterbook.imaging.OverlaidPicture;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.measure.Digest;
import tenterbook.measure.NumberWords;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Uncached;
import tenterbook.web.page.Words;
import tenterbook.words.Message;

/** Whether a piece or a test strip has changed between two of its photographs. */
public final class FadingPages {
    /** Long edge at which two photographs are laid over each other, pixels; regions are means, so more shows nothing more. */
    private static final int EDGE = 1000;

    private final Site site;
    private final PhotoMeasuring measuring;

    public FadingPages(Site site, PhotoMeasuring measuring) {
        this.site = site;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/{number}/change", this::show);
        routes.get("/pieces/{number}/change/aligned.jpg", this::aligned);
    }

    /**
     * One part of the cloth.
     *
     * @param words the verdict, from the interval
     * @param changed whether even the least change that the interval allows can be seen
     * @param notApart whether both photographs are calibrated and an unchanged cloth differs as much between two such
     * @param directions as in 'paler, yellower'; empty where none can be seen
     */
    public record FadingRow(
            String part,
            ColourBand.Swatch before,
            ColourBand.Swatch after,
            String words,
            String difference,
            String changes,
            String grade,
            String refusal,
            boolean changed,
            boolean notApart,
            String directions) {}

    /**
     * The page.
     *
     * @param refusal why the two cannot be compared; empty where they can
     * @param allowance ΔE that light and camera are allowed
     * @param caution what is not known about the light
     * @param answer one sentence; empty where nothing was compared
     */
    public record FadingView(
            Piece piece,
            String before,
            String after,
            List<FadingRow> rows,
            String refusal,
            String laid,
            double allowance,
            String caution,
            String answer) {}

    private Piece piece(Context ctx) {
        String number = ctx.pathParam("number");
        return site.saved(Kinds.PIECE, number).record();
    }

    private static PiecePhoto chosen(Piece piece, Context ctx, String name) {
        String digest = Optional.ofNullable(ctx.queryParam(name)).orElse("");
        return piece.photos().stream()
                .filter(photo -> photo.photo().hex().equals(digest))
                .findFirst()
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph-of-piece", "piece", piece.number())));
    }

    private void show(Context ctx) throws IOException {
        Piece piece = piece(ctx);
        FadingView view = ctx.queryParam("before") == null || ctx.queryParam("after") == null
                ? asking(piece)
                : compared(piece, chosen(piece, ctx, "before"), chosen(piece, ctx, "after"));
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("titles.change", "piece", piece.shown()), "pieces"));
        values.put("view", view);
        Html.show(ctx, "change", values);
    }

    /** The form, with the first and the last photograph of the whole front chosen; a sentence where there are not two. */
    private static FadingView asking(Piece piece) {
        List<PiecePhoto> fronts = piece.photos().stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT && photo.state() == piece.state())
                .toList();
        if (fronts.size() < 2) {
            String only = fronts.isEmpty() ? "" : fronts.get(0).photo().hex();
            return new FadingView(piece, only, only, List.of(), w("change.needs-two"), "", 0, "", "");
        }
        return new FadingView(
                piece,
                fronts.get(0).photo().hex(),
                fronts.get(fronts.size() - 1).photo().hex(),
                List.of(),
                "",
                "",
                0,
                "",
                "");
    }

    private FadingView compared(Piece piece, PiecePhoto before, PiecePhoto after) throws IOException {
        Optional<PhotoCalibration> first = measuring.calibration(before.photo());
        Optional<PhotoCalibration> second = measuring.calibration(after.photo());
        double allowance = allowance(first, second);
        String caution = first.isPresent() && second.isPresent() ? "" : w("change.not-calibrated");
        List<Region> regions = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (ColourRegion region : before.regions()) {
            if (region.corners().size() >= 3) {
                regions.add(new Region(region.corners().stream()
                        .map(corner -> new Region.Corner(corner.across(), corner.down()))
                        .toList()));
                names.add(region.name().isEmpty() ? w(region.role()) : w(region.role()) + ", " + region.name());
            }
        }
        if (regions.isEmpty()) {
            regions.add(Region.rectangle(0.35, 0.35, 0.65, 0.65));
            names.add(w("change.middle"));
        }
        ComparedPicture one = picture(before.photo());
        ComparedPicture two = picture(after.photo());
        MeasurementResult<Alignment> alignment = Registration.align(one, two);
        if (alignment.value().isEmpty()) {
            return new FadingView(
                    piece,
                    before.photo().hex(),
                    after.photo().hex(),
                    List.of(),
                    Words.w(alignment.reason()),
                    "",
                    allowance,
                    caution,
                    "");
        }
        List<FadingRow> rows = new ArrayList<>();
        for (int i = 0; i < regions.size(); i++) {
            rows.add(row(
                    names.get(i),
                    Fading.compare(one, two, alignment.value().get(), regions.get(i), allowance),
                    allowance,
                    caution.isEmpty()));
        }
        String laid = w(
                "change.laid",
                "degrees",
                Decimals.plain(alignment.value().get().degrees(), 1),
                "scale",
                NumberWords.decimals(alignment.value().get().scale(), 2),
                "agreement",
                NumberWords.decimals(alignment.value().get().correlation(), 2));
        return new FadingView(
                piece,
                before.photo().hex(),
                after.photo().hex(),
                rows,
                "",
                laid,
                allowance,
                caution,
                ChangeAnswer.of(rows, caution.isEmpty()));
    }

    /** ΔE that light and camera are allowed; one calibrated photograph alone brings its own error only. */
    private static double allowance(Optional<PhotoCalibration> first, Optional<PhotoCalibration> second) {
        return first.isPresent() && second.isPresent()
                ? StatedError.between(first.get().correction(), second.get().correction())
                : first.or(() -> second).map(PhotoCalibration::likelyError).orElse(0.0);
    }

    /** What is said of a part that shows no visible change. */
    private static String still(RegionChange change, double allowance, boolean calibrated) {
        return calibrated && ChangeWords.notApart(change, allowance)
                ? w("change.not-apart", "allowance", NumberWords.decimals(allowance, 1))
                : w(ChangeWords.size(change.ciede2000()));
    }

    private static FadingRow row(
            String name, MeasurementResult<RegionChange> found, double allowance, boolean calibrated) {
        if (found.value().isEmpty()) {
            return new FadingRow(name, null, null, "", "", "", "", Words.w(found.reason()), false, false, "");
        }
        RegionChange change = found.value().get();
        double difference = change.change().ciede2000();
        boolean visible = ChangeWords.visible(change);
        String directions = visible
                ? ChangeWords.directions(change, allowance).stream()
                        .map(Words::w)
                        .collect(Collectors.joining(", "))
                : "";
        return new FadingRow(
                name,
                ColourBand.swatch(change.before(), name, 1, 0),
                ColourBand.swatch(change.after(), name, 1, 0),
                visible
                        ? w(
                                "change.row",
                                "calibrated",
                                calibrated,
                                "directed",
                                !directions.isEmpty(),
                                "directions",
                                directions)
                        : still(change, allowance, calibrated),
                w(
                        "change.difference",
                        "visible",
                        visible,
                        "size",
                        ChangeWords.size(change.ciede2000()),
                        "difference",
                        NumberWords.decimals(difference, 1),
                        "low",
                        NumberWords.decimals(change.ciede2000().low(), 1),
                        "high",
                        NumberWords.decimals(change.ciede2000().high(), 1)),
                "ΔL* %s, Δa* %s, Δb* %s, ΔC* %s"
                        .formatted(
                                Decimals.signed(change.change().lightness(), 1),
                                Decimals.signed(change.change().a(), 1),
                                Decimals.signed(change.change().b(), 1),
                                Decimals.signed(change.change().chroma(), 1)),
                Words.w(change.grade().sentence()),
                "",
                visible,
                !visible && calibrated && ChangeWords.notApart(change, allowance),
                directions);
    }

    /** The picture as it is compared: corrected by its calibration where it has one, and of a moderate size. */
    private ComparedPicture picture(Digest photo) throws IOException {
        Pixels pixels = measuring.open(photo);
        Correction correction = measuring.correction(photo);
        double scale = Math.max(1.0, Math.max(pixels.width(), pixels.height()) / (double) EDGE);
        int width = (int) (pixels.width() / scale);
        int height = (int) (pixels.height() / scale);
        int[] argb = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                argb[y * width + x] = mean(pixels, correction, x * scale, y * scale, scale);
            }
        }
        return new ComparedPicture(argb, width, height);
    }

    /** The mean light of the pixels that one smaller pixel covers, corrected and encoded. */
    private static int mean(Pixels pixels, Correction correction, double left, double top, double scale) {
        double red = 0;
        double green = 0;
        double blue = 0;
        int count = 0;
        int right = Math.min(pixels.width(), (int) Math.ceil(left + scale));
        int bottom = Math.min(pixels.height(), (int) Math.ceil(top + scale));
        for (int y = (int) top; y < bottom; y++) {
            for (int x = (int) left; x < right; x++) {
                LinearRgb light = pixels.linear(x, y);
                red += light.red();
                green += light.green();
                blue += light.blue();
                count++;
            }
        }
        Lab lab = correction
                .apply(new LinearRgb(red / count, green / count, blue / count))
                .lab();
        Srgb srgb = lab.srgb();
        return 0xff000000 | srgb.red() << 16 | srgb.green() << 8 | srgb.blue();
    }

    /** The later photograph laid over the earlier, for the slider. */
    private void aligned(Context ctx) throws IOException {
        Piece piece = piece(ctx);
        PiecePhoto before = chosen(piece, ctx, "before");
        PiecePhoto after = chosen(piece, ctx, "after");
        ComparedPicture one = picture(before.photo());
        ComparedPicture two = picture(after.photo());
        Alignment alignment =
                Registration.align(one, two).value().orElseThrow(() -> new NotFound(Message.of("not-here.alignment")));
        Uncached.send(
                ctx,
                "image/jpeg",
                OverlaidPicture.jpeg(
                        one.width(),
                        one.height(),
                        new Pixels(two.argb(), two.width(), two.height()),
                        alignment::x,
                        alignment::y));
    }
}
