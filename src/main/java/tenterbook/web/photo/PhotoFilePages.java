package tenterbook.web.photo;

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
import java.util.stream.Stream;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.measure.Digest;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Photographs as files: taking them in, and sending originals and previews. */
public final class PhotoFilePages {
    private final Site site;
    private final PhotoRegistration registration;

    public PhotoFilePages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/photos", this::upload);
        routes.get("/photos/{digest}/original", this::original);
        routes.get("/photos/{digest}/{size}", this::preview);
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
        Digest digest = PhotoPages.digest(ctx);
        Path file = site.previews()
                .get(digest, size)
                .orElseThrow(() -> new NotFound(Message.of("not-here.picture", "name", digest.brief())));
        ctx.contentType("image/jpeg");
        ctx.header("Cache-Control", "private, max-age=31536000, immutable");
        ctx.result(Files.readAllBytes(file));
    }

    /** The original as it came, for the maker's own use: with everything the camera wrote. */
    private void original(Context ctx) throws IOException {
        Digest digest = PhotoPages.digest(ctx);
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
}
