package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.ChartOfCamera;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.CardReading;
import tenterbook.colour.target.CardRefused;
import tenterbook.colour.target.ChartCorrection;
import tenterbook.colour.target.ChartReference;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.PhotoCalibration.MarkedCard;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.measure.NumberWords;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Calibrating a photograph by a card in it, and measuring its named colours again by that. */
public final class CalibrationPages {
    private final Site site;
    private final PhotoMeasuring measuring;
    private final PhotoPages pages;

    public CalibrationPages(Site site, PhotoMeasuring measuring, PhotoPages pages) {
        this.site = site;
        this.measuring = measuring;
        this.pages = pages;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/pieces/{number}/photos/{digest}/find-card", this::findCard);
        routes.post("/pieces/{number}/photos/{digest}/calibrate", this::calibrate);
        routes.post("/pieces/{number}/photos/{digest}/measure-again", this::measureAgain);
    }

    private static Digest digest(Context ctx) {
        try {
            return new Digest(ctx.pathParam("digest"));
        } catch (IllegalArgumentException e) {
            throw new NotFound(Message.of("not-here.photograph-so-named"));
        }
    }

    private static String page(Context ctx) {
        return "/pieces/" + ctx.pathParam("number") + "/photos/" + ctx.pathParam("digest");
    }

    private void findCard(Context ctx) throws IOException {
        Optional<CardFinder.Found> found = CardFinder.find(measuring.open(digest(ctx)));
        if (found.isEmpty()) {
            FlashMessage.andGo(ctx, Words.w(CardFinder.NONE_FOUND), page(ctx) + "#calibrate");
            return;
        }
        boolean chart = found.get().chart();
        FlashMessage.andGo(
                ctx,
                chart ? w("measuring.looks-like-a-chart") : w("measuring.looks-like-a-card"),
                page(ctx) + "?" + (chart ? "card=" + ChartReference.FROM_NOVEMBER_2014.name() + "&" : "") + "corners="
                        + text(found.get().outline().corners()) + "#calibrate");
    }

    /** Corners as the form has them: percent across and down, four pairs. */
    static String text(List<Region.Corner> corners) {
        return corners.stream()
                .map(corner -> String.format(Locale.ROOT, "%.2f,%.2f", corner.x() * 100, corner.y() * 100))
                .collect(Collectors.joining("+"));
    }

    static CardOutline outline(String text, String card) {
        List<Region.Corner> corners = new ArrayList<>();
        for (String pair : text.strip().split("[\\s+;]+")) {
            String[] sides = pair.split(",");
            try {
                corners.add(new Region.Corner(Double.parseDouble(sides[0]) / 100, Double.parseDouble(sides[1]) / 100));
            } catch (RuntimeException e) {
                throw new Refusal(Message.of("measuring.corners-unreadable", "card", card, "found", text.strip()), e);
            }
        }
        return new CardOutline(corners);
    }

    private void calibrate(Context ctx) throws IOException {
        Digest photo = digest(ctx);
        Form form = Form.of(ctx.formParamMap());
        PhotoCalibration made = calibration(form, photo);
        if (made == null) {
            pages.again(ctx, form);
            return;
        }
        int before = site.archive()
                .ledger()
                .find(Kinds.CALIBRATION, photo.hex())
                .map(Saved::version)
                .orElse(0);
        site.archive().ledger().write(site.author(), act -> act.save(Kinds.CALIBRATION, made, before, ""));
        FlashMessage.andGo(
                ctx,
                w(
                        "measuring.calibrated",
                        "card",
                        made.how(),
                        "error",
                        NumberWords.decimals(made.likelyError(), 1),
                        "half",
                        NumberWords.decimals(made.halfError(), 1)),
                page(ctx));
    }

    /** What {@code maker} makes; null where it refuses, which is noted beside the field. */
    private static <T> T tried(Form form, String field, Supplier<T> maker) {
        try {
            return maker.get();
        } catch (CardRefused | IllegalArgumentException e) {
            form.problem(field, Words.sentence(e));
            return null;
        }
    }

    /** Reads the form of a card; null where something in it is wrong, which is noted beside its field. */
    private PhotoCalibration calibration(Form form, Digest photo) throws IOException {
        var picture = measuring.open(photo);
        CardOutline outline = tried(form, "corners", () -> outline(form.text("corners"), "card"));
        for (ChartReference chart : ChartReference.values()) {
            if (form.text("card").equals(chart.name())) {
                if (form.has("profile")) {
                    form.problem("profile", w("measuring.profile-with-one-card"));
                    return null;
                }
                ChartCorrection found = outline == null
                        ? null
                        : tried(form, "corners", () -> ChartCorrection.of(picture, outline, chart));
                return found == null
                        ? null
                        : PhotoCalibration.of(
                                photo, found, outline, chart, site.clock().instant(), site.author());
            }
        }
        KnownCard known = known(form);
        CardOutline dark = form.has("black") ? tried(form, "black", () -> outline(form.text("black"), "black")) : null;
        KnownCard blackCard = form.has("black")
                ? tried(
                        form,
                        "blackReflectance",
                        () -> KnownCard.neutral(
                                Message.of("measuring.black-card").inEnglish(),
                                percent(form.text("blackReflectance"), "4")))
                : null;
        if (!form.has("black") && form.has("blackReflectance")) {
            form.problem("black", w("measuring.black-corners-missing"));
        }
        if (form.hasProblems()) {
            return null;
        }
        CardReading reading = tried(form, "corners", () -> CardReading.of(picture, outline.inner()));
        CardReading darkReading =
                dark == null ? null : tried(form, "black", () -> CardReading.of(picture, dark.inner()));
        if (form.hasProblems()) {
            return null;
        }
        List<MarkedCard> cards = new ArrayList<>(List.of(MarkedCard.of(outline, known)));
        Correction correction;
        ChartOfCamera chart = form.has("profile") ? chartOfCamera(form, photo) : null;
        if (form.hasProblems()) {
            return null;
        }
        if (chart != null) {
            correction = tried(form, "profile", () -> chart.profile().with(reading, known));
        } else if (dark == null) {
            correction = tried(form, "corners", () -> Correction.byGrey(reading, known));
        } else {
            correction = tried(form, "black", () -> Correction.byWhiteAndBlack(reading, known, darkReading, blackCard));
            cards.add(MarkedCard.of(dark, blackCard));
        }
        return correction == null
                ? null
                : PhotoCalibration.of(
                        photo,
                        correction,
                        cards,
                        chart == null ? null : chart.photo().digest(),
                        site.clock().instant(),
                        site.author());
    }

    /** The chart that the form names; null where it is not this camera's newest or cannot go with what else is typed. */
    private @Nullable ChartOfCamera chartOfCamera(Form form, Digest photo) {
        Photo shown = site.archive()
                .ledger()
                .find(Kinds.PHOTO, photo.hex())
                .map(Saved::record)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", photo.brief())));
        if (form.has("black")) {
            form.problem("profile", w("measuring.profile-with-one-card"));
            return null;
        }
        Optional<ChartOfCamera> chart = ChartOfCamera.of(site.archive().ledger(), shown);
        if (chart.isEmpty() || !chart.get().photo().digest().hex().equals(form.text("profile"))) {
            form.problem(
                    "profile",
                    w(
                            "measuring.profile-of-another-camera",
                            "named",
                            !shown.camera().isBlank(),
                            "camera",
                            shown.camera(),
                            "found",
                            chart.isPresent()));
            return null;
        }
        return chart.get();
    }

    /** The card chosen; null where what is typed about it is wrong. It is taken for 18 % grey only where that is chosen. */
    private static KnownCard known(Form form) {
        return switch (form.text("card")) {
            case "grey18" -> KnownCard.grey18();
            case "reflectance" ->
                tried(form, "reflectance", () -> {
                    double y = percent(form.text("reflectance"), "");
                    return KnownCard.neutral(
                            Message.of("measuring.card-of-reflectance", "percent", NumberWords.decimals(y * 100, 1))
                                    .inEnglish(),
                            y);
                });
            case "lab" ->
                tried(
                        form,
                        "lab",
                        () -> new KnownCard(
                                Message.of("measuring.card-of-known-colour").inEnglish(), Lab.parse(form.text("lab"))));
            default -> {
                form.problem("card", w("measuring.which-card"));
                yield null;
            }
        };
    }

    /**
     * A reflectance as a share of one. The field asks for percent, and a bare number above 1 is nothing else; one of at most 1
     * could also be meant as a share, so it is taken with its sign alone.
     *
     * @param usual percent meant where nothing is typed; empty where something must be
     */
    private static double percent(String text, String usual) {
        String plain = (text.isEmpty() ? usual : text).replace(',', '.').strip();
        boolean unit = plain.endsWith("%");
        String number = unit ? plain.substring(0, plain.length() - 1).strip() : plain;
        if (!number.matches("\\d{1,3}([.]\\d{1,9})?")) {
            throw Refusal.of("measuring.reflectance-unreadable", "found", text);
        }
        BigDecimal value = new BigDecimal(number);
        if (!unit && value.signum() > 0 && value.compareTo(BigDecimal.ONE) <= 0) {
            throw Refusal.of(
                    "measuring.reflectance-ambiguous",
                    "found",
                    text,
                    "percent",
                    value.stripTrailingZeros().toPlainString(),
                    "share",
                    value.movePointRight(2).stripTrailingZeros().toPlainString());
        }
        return value.movePointLeft(2).doubleValue();
    }

    /** Measures every colour that was read from a marked part of this photograph again; the old values stay in the history. */
    private void measureAgain(Context ctx) throws IOException {
        String number = ctx.pathParam("number");
        Digest photo = digest(ctx);
        Saved<Piece> saved = site.saved(Kinds.PIECE, number);
        List<PiecePhoto> photos = new ArrayList<>();
        int again = 0;
        int left = 0;
        for (PiecePhoto each : saved.record().photos()) {
            if (!each.photo().equals(photo)) {
                photos.add(each);
                continue;
            }
            List<ColourRegion> regions = new ArrayList<>();
            for (ColourRegion region : each.regions()) {
                if (region.corners().size() < 3) {
                    regions.add(region);
                    left++;
                } else {
                    Region part = new Region(region.corners().stream()
                            .map(corner -> new Region.Corner(corner.across(), corner.down()))
                            .toList());
                    regions.add(measuring.region(photo, region.role(), region.name(), part, region.share()));
                    again++;
                }
            }
            photos.add(each.withRegions(regions));
        }
        site.archive()
                .ledger()
                .write(
                        site.author(),
                        act -> act.save(
                                Kinds.PIECE,
                                saved.record().withPhotos(photos),
                                saved.version(),
                                w("measuring.measured-again-note")));
        FlashMessage.andGo(ctx, w("measuring.measured-again", "measured", again, "left", left), page(ctx));
    }
}
