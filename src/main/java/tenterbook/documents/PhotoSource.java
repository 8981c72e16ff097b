package tenterbook.documents;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.Previews;
import tenterbook.measure.Digest;

/** Where a document's photographs come from: upright sRGB JPEG files, reduced. */
public interface PhotoSource {
    /** For documents without any. */
    PhotoSource NONE = (digest, size) -> Optional.empty();

    /**
     * @return empty where the photograph is not kept here or cannot be shown
     * @throws IOException if a file cannot be read
     */
    Optional<byte[]> jpeg(Digest digest, PreviewSize size) throws IOException;

    static PhotoSource of(Previews previews) {
        return (digest, size) -> {
            Optional<Path> file = previews.get(digest, size);
            return file.isEmpty() ? Optional.empty() : Optional.of(Files.readAllBytes(file.get()));
        };
    }
}
