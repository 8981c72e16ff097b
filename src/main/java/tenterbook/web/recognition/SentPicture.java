package tenterbook.web.recognition;

import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import tenterbook.imaging.Originals;
import tenterbook.imaging.UnkeptPicture;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.web.form.FormEncoding;
import tenterbook.words.Refusal;

/** The one picture of a form that is looked at and not kept. */
public final class SentPicture {
    private SentPicture() {}

    /**
     * @throws PhotoRefused if it is none that can be looked at
     * @throws Refusal if none was sent
     */
    public static UnkeptPicture of(Context ctx) throws IOException {
        UploadedFile file = FormEncoding.files(ctx, "files").stream()
                .findFirst()
                .orElseThrow(() -> Refusal.of("measuring.no-photograph-arrived"));
        if (file.size() > Originals.LIMIT_BYTES) {
            throw new ContentTooLargeResponse();
        }
        try (InputStream bytes = file.content()) {
            return UnkeptPicture.look(bytes, Originals.LIMIT_BYTES);
        }
    }
}
