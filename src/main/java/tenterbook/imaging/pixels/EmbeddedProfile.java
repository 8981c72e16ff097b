package tenterbook.imaging.pixels;

import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import tenterbook.words.Message;

/** The colour profile of a PNG file, which Java's reader does not apply. */
final class EmbeddedProfile {
    private static final int LARGEST = 8 << 20;

    private EmbeddedProfile() {}

    /** @see "ISO/IEC 15948, 11.3.3.3 (iCCP): a name, a zero, the method of compression, the profile" */
    static Optional<ICC_Profile> ofPng(Path file, List<String> warnings) throws IOException {
        Optional<ByteBuffer> chunk = PngChunks.first(file, "iCCP", LARGEST);
        if (chunk.isEmpty()) {
            return Optional.empty();
        }
        byte[] bytes = chunk.get().array();
        int name = 0;
        while (name < bytes.length && bytes[name] != 0) {
            name++;
        }
        int start = Math.min(bytes.length, name + 2);
        try (InflaterInputStream in =
                new InflaterInputStream(new ByteArrayInputStream(bytes, start, bytes.length - start))) {
            return ColourProfiles.parse(in.readNBytes(LARGEST), warnings);
        } catch (IOException e) {
            warnings.add(Message.of("photo.broken-profile", "why", String.valueOf(e.getMessage()))
                    .inEnglish());
            return Optional.empty();
        }
    }
}
