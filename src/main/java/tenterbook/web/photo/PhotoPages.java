package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.ChartOfCamera;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.Site;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Photographs: taking them in, sending previews, and naming the colours on one. */
public final class PhotoPages {
    private final Site site;
    private final PhotoRegistration registration;
    private final PhotoMeasuring measuring;

    public PhotoPages(Site site, PhotoRegistration registration, PhotoMeasuring measuring) {
        this.site = site;
        this.registration = registration;
        this.measuring = measuring;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/photos", this::upload);
        routes.get("/photos/{digest}/original", this::original);
        routes.get("/photos/{digest}/{size}", this::preview);
        routes.get(
                "/pieces/{number}/photos/{digest}",
                ctx -> show(
                        ctx,
                        Form.empty()
                                .put("corners", corners(ctx))
                                .put(
                                        "card",
                                        Optional.ofNullable(ctx.queryParam("card"))
                                                .orElse(""))));
        routes.post("/pieces/{number}/photos/{digest}/colours", this::nameColour);
        routes.post("/pieces/{number}/photos/{digest}/colours/forget", this::forgetColour);
    }

    static Digest digest(Context ctx) {
        try {
            return new Digest(ctx.pathParam("digest"));
        } catch (IllegalArgumentException e) {
            throw new NotFound(Message.of("not-here.photograph-so-named"));
        }
    }

    /** One or more files; answers with what became of each, so that one bad file spoils nothing. */
    private void upload(Context ctx) throws IOException {
        List<Map<String, Object>> answers = new ArrayList<>();
        for (UploadedFile file : FormEncoding.files(ctx, "files")) {
            answers.add(taken(file));
        }
        if (answers.isEmpty()) {
            throw Refusal.of("measuring.no-photograph-arrived");
        }
        boolean allRefused = answers.stream().allMatch(answer -> answer.containsKey("problem"));
        boolean allTooLarge =
                FormEncoding.files(ctx, "files").stream().allMatch(file -> file.size() > Originals.LIMIT_BYTES);
        ctx.status(allTooLarge ? 413 : allRefused ? 422 : 200);
        ctx.json(answers);
    }

    private Map<String, Object> taken(UploadedFile file) throws IOException {
        Map<String, Object> answer = new HashMap<>();
        answer.put("name", file.filename());
        try (InputStream bytes = file.content()) {
            Photo photo = registration.take(bytes, file.filename());
            answer.put("digest", photo.digest().hex());
            answer.put("viewable", photo.viewable());
            answer.put("notes", photo.notes());
            answer.put("gps", photo.gps());
            answer.put("shownBy", registration.shownBy(photo.digest()));
            if (photo.viewable()) {
                answer.put("preview", "/photos/" + photo.digest() + "/small");
            }
        } catch (PhotoRefused e) {
            answer.put("problem", Words.sentence(e));
        }
        return answer;
    }

    private void preview(Context ctx) throws IOException {
        PreviewSize size = Stream.of(PreviewSize.values())
                .filter(each -> each.name().toLowerCase(Locale.ROOT).equals(ctx.pathParam("size")))
                .findFirst()
                .orElseThrow(() -> new NotFound(Message.of("not-here.preview", "size", ctx.pathParam("size"))));
        Digest digest = digest(ctx);
        Path file = site.previews()
                .get(digest, size)
                .orElseThrow(() -> new NotFound(Message.of("not-here.picture", "name", digest.brief())));
        ctx.contentType("image/jpeg");
        ctx.header("Cache-Control", "private, max-age=31536000, immutable");
        ctx.result(Files.readAllBytes(file));
    }

    /** The original as it came, for the maker's own use: with everything the camera wrote. */
    private void original(Context ctx) throws IOException {
        Digest digest = digest(ctx);
        Photo photo = registration
                .find(digest)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        Path file = site.originals()
                .find(digest)
                .orElseThrow(() -> new NotFound(Message.of("not-here.original", "name", digest.brief())));
        ctx.contentType(photo.mediaType());
        ctx.header(
                "Content-Disposition",
                "attachment; filename=\"" + digest.brief() + "."
                        + photo.mediaType().replaceAll(".*/", "") + "\"");
        ctx.result(Files.newInputStream(file));
    }

    /**
     * A photograph of a piece with the outline of its cloth, its palette and the colours named on it.
     *
     * @param chart of the same camera, for a card in this photograph; null where there is none
     * @param corners of a card to draw; empty where none are typed or they are no numbers
     * @param white the white point of the values shown
     * @param typed what was typed for measuring and calibrating, with what is wrong about it
     */
    public record PhotoView(
            Piece piece,
            int version,
            PiecePhoto shot,
            Photo photo,
            SeenCloth seen,
            ColourBand clothBand,
            ColourBand palette,
            List<Named> named,
            PhotoCalibration calibration,
            @Nullable ChartOfCamera chart,
            String corners,
            boolean proposed,
            List<Proposal> proposals,
            WhitePoint white,
            Form typed) {
        /** A colour area the picture suggests, with the part to measure it on as corners in percent. */
        public record Proposal(String role, ColourBand.Swatch swatch, double share, String outline, String drawn) {}

        /** Corners as SVG reads them, in parts of the picture. */
        static String points(List<Region.Corner> corners) {
            return corners.stream()
                    .map(corner -> String.format(Locale.ROOT, "%.4f,%.4f", corner.x(), corner.y()))
                    .collect(java.util.stream.Collectors.joining(" "));
        }

        /** Of the outline of the cloth; empty without one. */
        public String clothPoints() {
            return points(seen.outline().corners());
        }

        /** The region's place in the list, and how it looks. */
        public record Named(int index, ColourRegion region, ColourBand.Swatch swatch, String corners) {}
    }

    Saved<Piece> piece(Context ctx) {
        String number = ctx.pathParam("number");
        return site.saved(Kinds.PIECE, number);
    }

    private static String corners(Context ctx) {
        return Optional.ofNullable(ctx.queryParam("corners")).orElse("").replace('+', ' ');
    }

    /** Of the cloth; where its edge is not known, of the whole picture, for a person to judge. */
    private List<PhotoView.Proposal> proposals(Digest digest, ClothOutline cloth) throws IOException {
        Region outline = cloth.edge().found() ? new Region(cloth.corners()) : Region.WHOLE;
        return measuring.proposals(digest, outline).stream()
                .map(area -> new PhotoView.Proposal(
                        area.part().toString(),
                        ColourBand.swatch(area.mean(), "", area.share(), 0),
                        area.share(),
                        CalibrationPages.text(area.sample().corners()).replace('+', ' '),
                        PhotoView.points(area.sample().corners())))
                .toList();
    }

    /** Shows the photograph again with what was typed about it and what is wrong with that; nothing was written. */
    void again(Context ctx, Form typed) throws IOException {
        ctx.status(422);
        show(ctx, typed);
    }

    private void show(Context ctx, Form typed) throws IOException {
        Saved<Piece> saved = piece(ctx);
        Digest digest = digest(ctx);
        PiecePhoto shot = shot(saved.record(), digest);
        Photo photo = registration
                .find(digest)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        List<PhotoView.Named> named = new ArrayList<>();
        for (int i = 0; i < shot.regions().size(); i++) {
            ColourRegion region = shot.regions().get(i);
            named.add(new PhotoView.Named(
                    i, region, ColourBand.swatch(region.colour(), region.name(), 1, 0), corners(region)));
        }
        SeenCloth seen = site.archive().cloths().of(photo);
        boolean propose = ctx.queryParam("propose") != null && photo.viewable();
        Html.show(
                ctx,
                "photo",
                Map.of(
                        "page",
                                site.page(
                                        ctx,
                                        w(
                                                "titles.photograph",
                                                "piece",
                                                saved.record().number()),
                                        "pieces"),
                        "view",
                                new PhotoView(
                                        saved.record(),
                                        saved.version(),
                                        shot,
                                        photo,
                                        seen,
                                        ColourBand.of(photo, seen.palette()),
                                        ColourBand.of(photo, photo.palette()),
                                        named,
                                        measuring.calibration(digest).orElse(null),
                                        ChartOfCamera.of(site.archive().ledger(), photo)
                                                .orElse(null),
                                        typed.text("corners").matches("[-\\d., ]*") ? typed.text("corners") : "",
                                        propose,
                                        propose ? proposals(digest, seen.outline()) : List.of(),
                                        WhitePoint.parse(ctx.queryParam("illuminant")),
                                        typed),
                        "colourRoles", Choices.words(ColourRole.values())));
    }

    private static String corners(ColourRegion region) {
        StringBuilder text = new StringBuilder();
        region.corners()
                .forEach(corner -> text.append(text.isEmpty() ? "" : " ")
                        .append(String.format(Locale.ROOT, "%.4f,%.4f", corner.across(), corner.down())));
        return text.toString();
    }

    static PiecePhoto shot(Piece piece, Digest digest) {
        return piece.photos().stream()
                .filter(each -> each.photo().equals(digest))
                .findFirst()
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph-of-piece", "piece", piece.number())));
    }

    /** Names a colour: measured over a marked part of the picture, or taken from the palette. */
    private void nameColour(Context ctx) throws IOException {
        Saved<Piece> saved = piece(ctx);
        Digest digest = digest(ctx);
        PiecePhoto shot = shot(saved.record(), digest);
        Photo photo = registration
                .find(digest)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph", "name", digest.brief())));
        String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
        String colour = Optional.ofNullable(ctx.formParam("colour")).orElse("");
        ColourRegion region;
        if (!colour.isBlank()) {
            Double share = share(ctx.formParam("share"));
            region = new ColourRegion(role(ctx.formParam("role")), name, Lab.parse(colour), share, List.of(), false);
        } else {
            Form typed = Form.of(ctx.formParamMap());
            region = measured(typed, digest, name);
            if (region == null) {
                again(ctx, typed);
                return;
            }
        }
        List<ColourRegion> regions = new ArrayList<>(shot.regions());
        regions.add(region);
        save(saved, digest, regions, w("measuring.named-note"));
        FlashMessage.andGo(
                ctx,
                w(
                        "measuring.named",
                        "part",
                        region.role(),
                        "colour",
                        ColourBand.swatch(region.colour(), "", 1, 0).words()),
                "/pieces/" + saved.record().number() + "/photos/" + digest);
    }

    /** One of those that the page offers. */
    private static ColourRole role(@Nullable String text) {
        return Stream.of(ColourRole.values())
                .filter(each -> each.toString().equals(text))
                .findFirst()
                .orElseThrow(() -> Refusal.of(
                        "measuring.no-such-part",
                        "choices",
                        List.of(ColourRole.values()).toString(),
                        "found",
                        text == null ? "" : text));
    }

    private static Double share(String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (!text.strip().matches("[01]([.]\\d{1,18})?(E-\\d{1,3})?")) {
            throw Refusal.of("measuring.no-share", "found", text);
        }
        return Double.valueOf(text.strip());
    }

    /** The colour of the part typed in; null where that part is no part of the picture, which is noted beside the field. */
    private ColourRegion measured(Form typed, Digest digest, String name) throws IOException {
        Double share = share(typed.value("share"));
        boolean free = typed.has("outline");
        Region part = free ? typed.read("outline", null, PhotoPages::drawn) : rectangle(typed);
        if (typed.hasProblems()) {
            return null;
        }
        ColourRole role = role(typed.value("role"));
        try {
            return measuring.region(digest, role, name, part, share);
        } catch (IllegalArgumentException e) {
            typed.problem(free ? "outline" : "left", Words.sentence(e));
            return null;
        }
    }

    private static Region rectangle(Form typed) {
        double[] box = new double[4];
        String[] fields = {"left", "top", "right", "bottom"};
        for (int i = 0; i < 4; i++) {
            String text = typed.text(fields[i]);
            if (text.matches("\\d{1,3}([.,]\\d{1,9})?") && percent(text) <= 1) {
                box[i] = percent(text);
            } else {
                typed.problem(fields[i], w("measuring.no-part-of-picture", "found", text, "field", fields[i]));
            }
        }
        return typed.hasProblems()
                ? null
                : Region.rectangle(
                        Math.min(box[0], box[2]),
                        Math.min(box[1], box[3]),
                        Math.max(box[0], box[2]),
                        Math.max(box[1], box[3]));
    }

    private static double percent(String text) {
        return Double.parseDouble(text.replace(',', '.')) / 100;
    }

    /** A part drawn freely: at least three corners in percent, as in '10,10 40,12 30,50'. */
    static Region drawn(String text) {
        List<Region.Corner> corners = new ArrayList<>();
        for (String pair : text.split("[\\s;]+")) {
            String[] sides = pair.split(",");
            try {
                corners.add(new Region.Corner(bound(sides[0]), bound(sides[1])));
            } catch (RuntimeException e) {
                throw new Refusal(Message.of("measuring.outline-unreadable", "found", pair), e);
            }
        }
        return new Region(corners);
    }

    private static double bound(String percent) {
        return Math.min(1, Math.max(0, Double.parseDouble(percent) / 100));
    }

    private void forgetColour(Context ctx) {
        Saved<Piece> saved = piece(ctx);
        Digest digest = digest(ctx);
        List<ColourRegion> regions =
                new ArrayList<>(shot(saved.record(), digest).regions());
        String typed = String.valueOf(ctx.formParam("index"));
        int index = typed.matches("\\d{1,6}") ? Integer.parseInt(typed) : regions.size();
        if (index < regions.size()) {
            regions.remove(index);
        }
        save(saved, digest, regions, w("measuring.taken-away-note"));
        FlashMessage.andGo(
                ctx, w("measuring.taken-away"), "/pieces/" + saved.record().number() + "/photos/" + digest);
    }

    private void save(Saved<Piece> saved, Digest digest, List<ColourRegion> regions, String note) {
        List<PiecePhoto> photos = saved.record().photos().stream()
                .map(each -> each.photo().equals(digest) ? each.withRegions(regions) : each)
                .toList();
        site.archive()
                .ledger()
                .write(
                        site.author(),
                        act -> act.save(Kinds.PIECE, saved.record().withPhotos(photos), saved.version(), note));
    }
}
