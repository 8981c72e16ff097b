package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.sample.OutlineScene;

class ClothTableTest {
    @TempDir
    Path folder;

    private Path file;
    private Photo photo;
    private SeenCloth onArrival;

    @BeforeEach
    void take() throws IOException {
        Originals originals = new Originals(folder.resolve("photos"));
        file = folder.resolve("derived").resolve("cloth.db");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(OutlineScene.draw(OutlineScene.Kind.ON_GRASS, 201).image(), "jpeg", bytes);
        try (ClothTable table = new ClothTable(folder.resolve("photos"), file)) {
            photo = new PhotoIntake(originals, new Previews(folder.resolve("previews"), originals), table)
                    .take(new ByteArrayInputStream(bytes.toByteArray()), "a.jpg");
            onArrival = table.of(photo);
        }
    }

    private SeenCloth seenAnew(Photo asked) {
        try (ClothTable table = new ClothTable(folder.resolve("photos"), file)) {
            return table.of(asked);
        }
    }

    @Test
    void aTableThatIsGoneOrBrokenIsMadeAnewWithTheSameOutlineAndColours() throws IOException {
        assertThat(onArrival.outline().edge()).isEqualTo(Edge.FOUND);
        assertThat(onArrival.palette()).isNotEmpty();
        assertThat(seenAnew(photo)).isEqualTo(onArrival);
        Files.delete(file);
        assertThat(seenAnew(photo)).isEqualTo(onArrival);
        Files.writeString(file, "no table at all, but long enough to be taken for the head of one ".repeat(20));
        assertThat(seenAnew(photo)).isEqualTo(onArrival);
    }

    @Test
    void anOutlineDrawnByAPersonIsTakenAsItIs() {
        Region corner = Region.rectangle(0, 0, 0.1, 0.1);
        SeenCloth drawn = seenAnew(photo.withCloth(corner.corners()));
        assertThat(drawn.outline().edge()).isEqualTo(Edge.DRAWN);
        assertThat(drawn.outline().corners()).isEqualTo(corner.corners());
        assertThat(drawn.palette())
                .allSatisfy(
                        colour -> assertThat(colour.colour().a()).as("grass").isLessThan(-5));
        assertThat(seenAnew(photo)).isEqualTo(onArrival);
    }

    @Test
    void aPhotographThatIsNotHereHasNoColourAndIsLookedForAgainWhenItIs() throws IOException {
        Files.delete(file);
        Path original = Originals.find(folder.resolve("photos"), photo.digest()).orElseThrow();
        Path away = folder.resolve("away");
        Files.move(original, away);
        assertThat(seenAnew(photo)).isEqualTo(SeenCloth.NONE);
        Files.move(away, original);
        assertThat(seenAnew(photo)).isEqualTo(onArrival);
    }

    @Test
    void whereNothingMayBeWrittenItIsKeptInMemory() {
        try (ClothTable table = new ClothTable(folder.resolve("photos"), null)) {
            assertThat(table.of(List.of(photo))).containsEntry(photo.digest(), onArrival);
        }
    }
}
