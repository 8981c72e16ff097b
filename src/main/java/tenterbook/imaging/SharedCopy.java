package tenterbook.imaging;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import tenterbook.imaging.pixels.Jpeg;
import tenterbook.measure.Digest;

/** A copy of a photograph to hand out: upright, sRGB, at most 2048 pixels long, without coordinates or other metadata. */
public final class SharedCopy {
    private final Previews previews;

    public SharedCopy(Previews previews) {
        this.previews = previews;
    }

    /**
     * Writes the copy as JPEG. Metadata are taken out here again, whatever may have been put into the preview since.
     *
     * @return false, with nothing written, if the photograph cannot be shown
     */
    public boolean write(Digest digest, OutputStream out) throws IOException {
        Optional<Path> preview = previews.get(digest, PreviewSize.LARGE);
        if (preview.isEmpty()) {
            return false;
        }
        out.write(Jpeg.withoutMetadata(Files.readAllBytes(preview.get())));
        return true;
    }
}
