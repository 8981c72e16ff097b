package tenterbook.web.recognition;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.OverlaidPicture;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.pixels.Jpeg;
import tenterbook.imaging.pixels.RgbPicture;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.search.recognition.Homography;
import tenterbook.search.recognition.Recognition;
import tenterbook.search.recognition.Recognition.Candidate;
import tenterbook.search.recognition.Recognition.Level;
import tenterbook.web.Site;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Uncached;
import tenterbook.words.Message;

/** Which piece a photograph shows, with the evidence; likeness, and never a proof. */
public final class RecognitionPages {
    /** So often a page asks for the piece that a photograph shows, five seconds apart: two minutes. */
    private static final int MOST_AGAIN = 24;

    private final Site site;
    private final RunningRecognitions running;
    private final PhotoMeasure photos;

    public RecognitionPages(Site site, RunningRecognitions running) {
        this.site = site;
        this.running = running;
        this.photos = new PhotoMeasure(site.originals());
    }

    public void routes(RoutesConfig routes) {
        routes.post("/photos/{digest}/recognition", this::ofPhotograph);
        routes.get("/photos/{digest}/likely-piece", this::likelyPiece);
        routes.get("/recognition/{token}", this::show);
        routes.post("/recognition/{token}/stop", ctx -> {
            run(ctx).stop();
            ctx.redirect("/recognition/" + ctx.pathParam("token"), HttpStatus.SEE_OTHER);
        });
        routes.get(
                "/recognition/{token}/picture.jpg",
                ctx -> Uncached.send(ctx, "image/jpeg", Jpeg.encode(picture(run(ctx).picture()), QUALITY)));
        routes.get("/recognition/{token}/over/{photo}", this::laidOver);
    }

    private static final float QUALITY = 0.86f;

    private static RgbPicture picture(Pixels pixels) {
        return new RgbPicture(pixels.argb(), pixels.width(), pixels.height());
    }

    private RunningRecognition run(Context ctx) {
        return running.find(ctx.pathParam("token")).orElseThrow(() -> new NotFound(Message.of("not-here.recognition")));
    }

    /** A photograph of the archive: compared with all others. */
    private void ofPhotograph(Context ctx) throws IOException {
        Digest photo = digest(site, ctx);
        PhotoMeasure.Opened opened =
                photos.open(photo).orElseThrow(() -> new NotFound(Message.of("not-here.photograph-picture")));
        RunningRecognition started = running.start(opened.pixels(), photo);
        ctx.redirect("/recognition/" + started.token(), HttpStatus.SEE_OTHER);
    }

    static Digest digest(Site site, Context ctx) {
        String hex = ctx.pathParam("digest");
        if (!hex.matches("[0-9a-f]{64}") || site.ledger().find(Kinds.PHOTO, hex).isEmpty()) {
            throw new NotFound(Message.of("not-here.photograph-picture"));
        }
        return new Digest(hex);
    }

    private void show(Context ctx) {
        RunningRecognition run = run(ctx);
        Map<String, Object> values = values(run);
        if ("true".equals(ctx.header("HX-Request"))) {
            Html.show(ctx, "part/recognition", values);
        } else {
            values.put("page", site.page(ctx, w("recognition.title"), "pieces"));
            Html.show(ctx, "recognition", values);
        }
    }

    private Map<String, Object> values(RunningRecognition run) {
        Map<String, Object> values = new HashMap<>();
        Recognition answer = run.answer();
        values.put("run", run);
        values.put("view", answer == null ? null : RecognitionView.of(site, run, answer));
        return values;
    }

    /** The picture laid on a photograph that is like it. */
    private void laidOver(Context ctx) throws IOException {
        RunningRecognition run = run(ctx);
        String hex = ctx.pathParam("photo").replace(".jpg", "");
        Recognition answer = run.answer();
        Optional<Candidate> found = answer == null
                ? Optional.empty()
                : answer.pieces().stream()
                        .filter(each -> each.photo().hex().equals(hex))
                        .findFirst();
        Candidate candidate = found.orElseThrow(() -> new NotFound(Message.of("not-here.recognition")));
        var preview = ImageIO.read(site.previews()
                .get(candidate.photo(), PreviewSize.MEDIUM)
                .orElseThrow(() -> new NotFound(Message.of("not-here.photograph-picture")))
                .toFile());
        Homography back = candidate.evidence().onPhotograph().inverse();
        int width = preview.getWidth();
        int height = preview.getHeight();
        Pixels above = run.picture();
        Uncached.send(
                ctx,
                "image/jpeg",
                OverlaidPicture.jpeg(
                        width,
                        height,
                        above,
                        (x, y) -> back.x(x / width, y / height) * above.width(),
                        (x, y) -> back.y(x / width, y / height) * above.height()));
    }

    /**
     * For one photograph in a list: the piece that it seems to show, where that can be said and is not known yet. While it, or others that
     * it may be like, were not looked at, the page asks again.
     */
    private void likelyPiece(Context ctx) {
        Digest photo = digest(site, ctx);
        Recognition answer =
                site.recogniser().recognise(photo, Progress.UNWATCHED).orElse(null);
        boolean said = answer != null && answer.level() == Level.THIS_PIECE;
        Candidate first = said ? answer.pieces().get(0) : null;
        boolean known = first != null
                && site.ledger().referencedBy(Kinds.PHOTO.key(photo.hex())).stream()
                        .anyMatch(
                                key -> key.equals(Kinds.PIECE.key(first.piece().value())));
        Map<String, Object> values = new HashMap<>();
        String row = Optional.ofNullable(ctx.queryParam("row")).orElse("");
        String asked = Optional.ofNullable(ctx.queryParam("again")).orElse("0");
        int again = asked.matches("\\d{1,4}") ? Integer.parseInt(asked) : MOST_AGAIN;
        boolean later = answer == null || answer.level() == Level.UNKNOWN && answer.waiting() > 0;
        values.put(
                "again",
                later && again < MOST_AGAIN
                        ? "/photos/" + photo.hex() + "/likely-piece?row=" + Address.encoded(row) + "&again="
                                + (again + 1)
                        : "");
        values.put("field", row.matches("\\d{1,4}") ? "photos." + row + ".proposed" : "");
        values.put("line", first == null || known ? null : RecognitionView.line(site, first));
        values.put(
                "given",
                !site.ledger().referencedBy(Kinds.PHOTO.key(photo.hex())).isEmpty());
        Html.show(ctx, "part/likelypiece", values);
    }
}
