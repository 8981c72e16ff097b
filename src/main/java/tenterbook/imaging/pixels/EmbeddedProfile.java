package tenterbook.imaging.pixels;

import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import org.w3c.dom.NodeList;
import tenterbook.words.Message;

/** The colour profile of a PNG file, which Java's reader hands over but does not apply. */
final class EmbeddedProfile {
    private static final String PNG = "javax_imageio_png_1.0";
    private static final int LARGEST = 8 << 20;

    private EmbeddedProfile() {}

    static Optional<ICC_Profile> ofPng(ImageReader reader, List<String> warnings) throws IOException {
        IIOMetadata metadata = reader.getImageMetadata(0);
        if (metadata == null || !PNG.equals(metadata.getNativeMetadataFormatName())) {
            return Optional.empty();
        }
        NodeList nodes = ((IIOMetadataNode) metadata.getAsTree(PNG)).getElementsByTagName("iCCP");
        if (nodes.getLength() == 0) {
            return Optional.empty();
        }
        byte[] packed = (byte[]) ((IIOMetadataNode) nodes.item(0)).getUserObject();
        try (InflaterInputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
            return ColourProfiles.parse(in.readNBytes(LARGEST), warnings);
        } catch (IOException e) {
            warnings.add(Message.of("photo.broken-profile", "why", String.valueOf(e.getMessage()))
                    .inEnglish());
            return Optional.empty();
        }
    }
}
