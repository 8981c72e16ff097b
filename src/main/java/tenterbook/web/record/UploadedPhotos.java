package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.Consumer;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.measure.Digest;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.Words;

/** Photographs uploaded with a form. */
public final class UploadedPhotos {
    private UploadedPhotos() {}

    /** Registers each file and gives its digest to {@code taken}; why one is refused is noted beside the field. */
    public static void take(Context ctx, Form form, PhotoRegistration registration, Consumer<Digest> taken) {
        for (UploadedFile file : FormEncoding.files(ctx, "files")) {
            try (InputStream bytes = file.content()) {
                taken.accept(registration.take(bytes, file.filename()).digest());
            } catch (PhotoRefused | IOException e) {
                form.problem("files", w("photo.file-problem", "file", file.filename(), "problem", Words.sentence(e)));
            }
        }
    }
}
