package tenterbook.sample;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import tenterbook.archive.record.StoredCodes;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.Previews;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.PiecePhoto;

/** Draws each photograph once, when a piece first tells of it, and brings it in as the program brings in any other. */
final class Darkroom {
    private final Map<String, SampleScenes.Cloth> cloths = SampleScenes.cloths();
    private final Map<String, SampleScenes.Shot> shots =
            SampleScenes.shots().stream().collect(Collectors.toMap(SampleScenes.Shot::file, Function.identity()));
    private final Map<String, Print> prints = new HashMap<>();
    private final PhotoIntake intake;
    private final Previews previews;
    private final Progress progress;

    private record Print(Digest digest, List<ColourRegion> regions) {}

    Darkroom(PhotoIntake intake, Previews previews, Progress progress) {
        this.intake = intake;
        this.previews = previews;
        this.progress = progress;
    }

    /** @param arrived told of the photograph if it was not in the archive before */
    PiecePhoto photo(ObjectNode row, Consumer<Photo> arrived) {
        String file = row.path("file").asText();
        Map<ColourRole, String> names = new EnumMap<>(ColourRole.class);
        for (ColourRole role : ColourRole.values()) {
            String name = row.path(StoredCodes.COLOUR_ROLE.code(role)).asText();
            if (!name.isEmpty()) {
                names.put(role, name);
            }
        }
        Print print = prints.get(file);
        if (print == null) {
            progress.at(prints.size(), shots.size(), "photographing " + file);
            progress.orStop();
            try {
                print = develop(shot(file), names, arrived);
            } catch (IOException io) {
                throw new UncheckedIOException("The sample photograph " + file + " could not be made", io);
            }
            prints.put(file, print);
        }
        return new PiecePhoto(
                print.digest,
                StoredCodes.PHOTO_ROLE.choice(row.path("role").asText()),
                row.path("caption").asText(),
                row.path("state").asInt(1),
                print.regions,
                layer(shot(file)));
    }

    /** A photograph that a piece has told of before. */
    Digest digest(String file) {
        Print print = prints.get(file);
        if (print == null) {
            throw new IllegalStateException("No sample piece has told of the photograph " + file + " yet");
        }
        return print.digest;
    }

    private static Integer layer(SampleScenes.Shot shot) {
        return shot.view().equals("LAYER") && shot.layer() > 0 ? shot.layer() : null;
    }

    private SampleScenes.Shot shot(String file) {
        SampleScenes.Shot shot = shots.get(file);
        if (shot == null) {
            throw new IllegalStateException("A sample piece tells of the photograph " + file + ", which nobody takes");
        }
        return shot;
    }

    private Print develop(SampleScenes.Shot shot, Map<ColourRole, String> names, Consumer<Photo> arrived)
            throws IOException {
        if (names.isEmpty()) {
            BufferedImage image = SamplePhotographs.develop(cloths, shot).image();
            return new Print(take(image, shot, arrived).digest(), List.of());
        }
        ClothPhotograph.Taken taken = ClothPhotograph.take(SampleScenes.scene(cloths.get(shot.subject()), shot));
        Photo photo = take(taken.image(), shot, arrived);
        return new Print(photo.digest(), new NamedColours(taken.photograph(), shown(photo)).marked(names));
    }

    private Photo take(BufferedImage image, SampleScenes.Shot shot, Consumer<Photo> arrived) throws IOException {
        Photo photo = intake.take(new ByteArrayInputStream(SamplePhotographs.jpeg(image, shot)), shot.file());
        arrived.accept(photo);
        return photo;
    }

    /** The pixels that the archive's own pages measure; the sample's originals are no larger than the large preview. */
    private int[] shown(Photo photo) throws IOException {
        Path preview = previews.get(photo.digest(), PreviewSize.LARGE).orElseThrow();
        BufferedImage image = ImageIO.read(preview.toFile());
        int[] argb = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        for (int i = 0; i < argb.length; i++) {
            argb[i] |= 0xff000000;
        }
        return argb;
    }

    /** Photographs that the tables list and no piece has told of. */
    List<String> untaken() {
        return shots.keySet().stream()
                .filter(file -> !prints.containsKey(file))
                .sorted()
                .toList();
    }
}
