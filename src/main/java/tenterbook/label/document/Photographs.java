package tenterbook.label.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import tenterbook.measure.Digest;
import tenterbook.photo.PreviewSize;
import tenterbook.photo.Previews;

/** Where a document's photographs come from: upright sRGB JPEG files, reduced. */
public interface Photographs {
    /** For documents without any. */
    Photographs NONE = (digest, size) -> Optional.empty();

    /**
     * @return empty where the photograph is not kept here or cannot be shown
     * @throws IOException if a file cannot be read
     */
    Optional<byte[]> jpeg(Digest digest, PreviewSize size) throws IOException;

    static Photographs of(Previews previews) {
        return (digest, size) -> {
            Optional<Path> file = previews.get(digest, size);
            return file.isEmpty() ? Optional.empty() : Optional.of(Files.readAllBytes(file.get()));
        };
    }
}
