package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.Restore;
import tenterbook.exchange.Restored;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PreviewSize;
import tenterbook.imaging.Previews;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.piece.CareTest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.EventKind;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;

/** The bag that is kept with the source is whole, restores, and holds what this program draws. */
class SampleArchiveTest {
    private static final Path BAG = Path.of("sample-archive");
    private static final Map<String, SampleScenes.Shot> SHOTS =
            SampleScenes.shots().stream().collect(Collectors.toMap(SampleScenes.Shot::file, shot -> shot));

    @TempDir
    static Path folder;

    private static Restored restored;
    private static Archive archive;
    private static Originals originals;
    private static Map<Digest, Photo> photos;

    @BeforeAll
    static void restore() throws Exception {
        restored = new Restore(Clock.systemUTC()).restore(BAG, folder.resolve("archive"), Progress.UNWATCHED);
        archive = Archive.open(folder.resolve("archive"), Clock.systemUTC());
        originals = new Originals(archive.folder().photos());
        photos = archive.ledger().all(Kinds.PHOTO).stream()
                .map(Saved::record)
                .collect(Collectors.toMap(Photo::digest, photo -> photo));
    }

    @AfterAll
    static void close() {
        archive.close();
    }

    private static List<Piece> pieces() {
        return records(Kinds.PIECE);
    }

    private static <T> List<T> records(Kind<T> kind) {
        return archive.ledger().all(kind).stream().map(Saved::record).toList();
    }

    private static Piece piece(String number) {
        return archive.piece(number).orElseThrow();
    }

    @Test
    void theKeptBagIsWholeAndSmall() throws Exception {
        assertThat(restored.damage()).isEmpty();
        assertThat(restored.notes()).isEmpty();
        assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
        try (Stream<Path> files = Files.walk(BAG)) {
            long bytes = files.filter(Files::isRegularFile)
                    .mapToLong(file -> file.toFile().length())
                    .sum();
            assertThat(bytes).isBetween(5_000_000L, 25_000_000L);
        }
    }

    @Test
    void theWholeStudioIsThere() {
        assertThat(archive.studio().name()).isEqualTo("Oficina Valderim");
        assertThat(archive.studio().notice()).startsWith("Sample archive: an invented studio.");
        assertThat(records(Kinds.BOARD_PAIR)).hasSize(6);
        assertThat(records(Kinds.CLOTH)).hasSize(6);
        assertThat(records(Kinds.CLAMPING)).hasSize(24);
        assertThat(photos).hasSize(SHOTS.size());
        assertThat(pieces()).hasSize(23).allSatisfy(piece -> {
            assertThat(piece.photos()).hasSizeGreaterThanOrEqualTo(2);
            assertThat(piece.photos().get(0).role()).isEqualTo(PhotoRole.FRONT);
            assertThat(piece.photos().get(0).state()).isEqualTo(piece.state());
        });
        assertThat(records(Kinds.BOARD_PAIR).stream()
                        .map(board -> board.newest().holes().size()))
                .containsExactly(18, 24, 9, 16, 30, 12);
    }

    @Test
    void piecesAreWhereTheStoryLeftThem() {
        assertThat(piece("V24-001").status()).isEqualTo(Status.SOLD);
        assertThat(piece("V24-002").state()).isEqualTo(2);
        assertThat(piece("V24-003").holder().value()).isEqualTo("sala-vermia");
        assertThat(piece("V24-011").status()).isEqualTo(Status.SECOND);
        assertThat(piece("V24-013").events())
                .anyMatch(
                        event -> event.kind() == EventKind.LENT && event.until().known());
        assertThat(piece("V24-010").tests()).anyMatch(test -> test.kind() == CareTest.Kind.HAND_WASH && test.passed());
        assertThat(piece("V24-017").edition()).isEqualTo("2 of 9");
    }

    @Test
    void historiesRunForwardsThroughOneYear() {
        List<Revision> all = archive.ledger().after(0, 1000);
        for (int i = 1; i < all.size(); i++) {
            assertThat(all.get(i).writtenAt()).isAfterOrEqualTo(all.get(i - 1).writtenAt());
        }
        assertThat(all.get(0).writtenAt()).isAfter(Instant.parse("2024-01-01T00:00:00Z"));
        assertThat(all.get(all.size() - 1).writtenAt()).isBefore(Instant.parse("2025-01-01T00:00:00Z"));
        assertThat(archive.ledger().history(Kinds.BOARD_PAIR.key("B02"))).hasSize(2);
        assertThat(archive.ledger().history(Kinds.PIECE.key("V24-003"))).hasSize(4);
        assertThat(archive.ledger().history(Kinds.PIECE.key("V24-013"))).hasSize(4);
        assertThat(all.stream().map(Revision::author).distinct()).contains("Inês Valderim", "Tomé Quarral");
    }

    /** The scenario's ground of each cloth: as the photograph's stated cast turns it, or as it is where a card took the cast out. */
    private static Lab expected(SampleScenes.Cloth cloth, SampleScenes.Shot shot, boolean calibrated) {
        if (calibrated) {
            SampleColour.Lab ground = cloth.ground();
            return new Lab(ground.l(), ground.a(), ground.b());
        }
        double[] rgb = SampleColour.linear(cloth.ground());
        SampleColour.Lab lab = SampleColour.lab(
                rgb[0] * shot.cast().red(),
                rgb[1] * shot.cast().green(),
                rgb[2] * shot.cast().blue());
        return new Lab(lab.l(), lab.a(), lab.b());
    }

    private static Optional<ColourRegion> region(PiecePhoto photo, ColourRole role) {
        return photo.regions().stream().filter(region -> region.role() == role).findFirst();
    }

    /** Light, folds and unequal layers shift each photograph a little; all were within 2.5 when the bag was made. */
    @Test
    void namedGroundsHaveTheScenariosColoursUnderTheStatedCastAndTheResistIsLighter() {
        Map<String, SampleScenes.Cloth> cloths = SampleScenes.cloths();
        List<String> judged = new ArrayList<>();
        for (Piece piece : pieces()) {
            for (PiecePhoto photo : piece.photos()) {
                Optional<ColourRegion> ground = region(photo, ColourRole.GROUND);
                if (ground.isEmpty()) {
                    continue;
                }
                SampleScenes.Shot shot = SHOTS.get(photos.get(photo.photo()).originalName());
                Lab seen = ground.get().colour();
                assertThat(Ciede2000.difference(
                                seen,
                                expected(
                                        cloths.get(shot.subject()),
                                        shot,
                                        ground.get().calibrated())))
                        .as("%s: %s", shot.file(), seen.text())
                        .isLessThan(4);
                ColourRegion resist = region(photo, ColourRole.RESIST).orElseThrow();
                assertThat(resist.colour().lightness())
                        .as("resist of " + shot.file())
                        .isGreaterThan(seen.lightness() + 12);
                assertThat(photo.regions().stream()
                                .mapToDouble(ColourRegion::share)
                                .sum())
                        .as("shares of " + shot.file())
                        .isBetween(0.98, 1.02);
                judged.add(shot.subject());
            }
        }
        assertThat(pieces().stream()
                        .flatMap(piece -> piece.photos().stream())
                        .flatMap(photo -> photo.regions().stream())
                        .filter(region -> region.role() == ColourRole.GROUND)
                        .filter(ColourRegion::calibrated))
                .hasSize(13);
        assertThat(judged).containsExactlyInAnyOrderElementsOf(cloths.keySet());
    }

    @Test
    void coordinatesAreInTwoOriginalsAndInNoPreview() throws Exception {
        Previews previews = new Previews(archive.folder().previews(), originals);
        List<Photo> placed = photos.values().stream().filter(Photo::gps).toList();
        assertThat(placed).hasSize(2);
        for (Photo photo : placed) {
            assertThat(hasCoordinates(originals.find(photo.digest()).orElseThrow()))
                    .isTrue();
            for (PreviewSize size : PreviewSize.values()) {
                assertThat(hasCoordinates(previews.get(photo.digest(), size).orElseThrow()))
                        .isFalse();
            }
        }
    }

    private static boolean hasCoordinates(Path file) throws Exception {
        GpsDirectory gps = ImageMetadataReader.readMetadata(file.toFile()).getFirstDirectoryOfType(GpsDirectory.class);
        return gps != null && gps.getGeoLocation() != null;
    }

    /** Another Java may draw and compress a shade differently, so pixels are compared and not bytes. */
    @Test
    void theKeptPhotographIsTheOneThisProgramDraws() throws Exception {
        String file = "V24-003-detail.jpg";
        SampleScenes.Shot shot = SHOTS.get(file);
        byte[] drawn = SamplePhotographs.jpeg(
                SamplePhotographs.develop(SampleScenes.cloths(), shot).image(), shot);
        Photo kept = photos.values().stream()
                .filter(photo -> photo.originalName().equals(file))
                .findFirst()
                .orElseThrow();
        BufferedImage one = ImageIO.read(new ByteArrayInputStream(drawn));
        BufferedImage other =
                ImageIO.read(originals.find(kept.digest()).orElseThrow().toFile());
        assertThat(other.getWidth()).isEqualTo(one.getWidth());
        assertThat(other.getHeight()).isEqualTo(one.getHeight());
        double sum = 0;
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                int a = one.getRGB(x, y);
                int b = other.getRGB(x, y);
                for (int shift = 0; shift <= 16; shift += 8) {
                    sum += Math.abs((a >> shift & 255) - (b >> shift & 255));
                }
            }
        }
        assertThat(sum / (3.0 * one.getWidth() * one.getHeight()))
                .as("mean difference of a level, 0 to 255")
                .isLessThan(2);
    }

    @Test
    void buildingOverSomethingIsRefusedBeforeAnythingIsDrawn() throws Exception {
        Path used = Files.createDirectories(folder.resolve("used"));
        Files.writeString(used.resolve("note.txt"), "mine");
        assertThatThrownBy(() -> SampleArchive.build(used, folder.resolve("work"), Progress.UNWATCHED))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("already there");
        assertThatThrownBy(() -> SampleArchive.build(folder.resolve("bag"), used, Progress.UNWATCHED))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("missing or empty");
        assertThat(folder.resolve("work")).doesNotExist();
        assertThat(folder.resolve("bag")).doesNotExist();
    }
}
