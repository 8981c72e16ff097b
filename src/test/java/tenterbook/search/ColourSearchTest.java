package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.piece.Status;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;

class ColourSearchTest {
    private static final int PIECES = 600;

    @TempDir
    static Path folder;

    static Archive archive;
    static PieceIndex index;
    static final Map<String, List<PaletteColour>> PALETTES = new HashMap<>();

    @BeforeAll
    static void open() {
        archive = Demo.archive(folder);
        Random random = new Random(11);
        archive.ledger().write("Inês", act -> {
            for (int i = 0; i < PIECES; i++) {
                List<PaletteColour> palette = new ArrayList<>();
                for (int j = 0; j < 6; j++) {
                    Lab colour = new Lab(
                            random.nextDouble() * 100, random.nextGaussian() * 25, random.nextGaussian() * 25 - 8);
                    palette.add(new PaletteColour(colour, 0.025 + random.nextDouble() * 0.14));
                }
                Photo photo = Demo.photo("p" + i, palette);
                String number = "V24-%03d".formatted(i);
                PALETTES.put(number, palette);
                Demo.allCloth(archive, photo);
                act.create(Kinds.PHOTO, photo);
                act.create(
                        Kinds.PIECE,
                        Demo.piece(number, "", null, Status.KEPT, "2024")
                                .withPhotos(List.of(Demo.front(photo, "front", 1))));
            }
            return null;
        });
        index = PieceIndex.open(archive);
        assertThat(index.await(java.time.Duration.ofSeconds(30))).isTrue();
    }

    @AfterAll
    static void close() {
        index.close();
        archive.close();
    }

    /** Every piece and its distance, by looking at every colour with the plain formula. */
    private static Map<String, Double> scanned(Lab wanted, double within, double share) {
        Map<String, Double> found = new HashMap<>();
        PALETTES.forEach((number, palette) -> {
            double sum = 0;
            double nearest = Double.POSITIVE_INFINITY;
            for (PaletteColour colour : palette) {
                double difference = Ciede2000.difference(wanted, colour.colour());
                nearest = Math.min(nearest, difference);
                sum += difference <= within ? colour.share() : 0;
            }
            if (nearest <= within && (share == 0 || sum >= share - 1e-6)) {
                found.put(number, nearest);
            }
        });
        return found;
    }

    @Test
    void noPieceThatAFullScanFindsIsMissedAndNoneIsAdded() {
        Random random = new Random(5);
        long found = 0;
        for (int i = 0; i < 300; i++) {
            Lab wanted = new Lab(random.nextDouble() * 100, random.nextGaussian() * 30, random.nextGaussian() * 30);
            double within = 0.5 + random.nextDouble() * 39;
            double share = i % 3 == 0 ? random.nextDouble() * 0.5 : 0;
            PieceQuery query = PieceQuery.EVERYTHING
                    .withColours(near(wanted, within, share))
                    .withSize(200);
            Map<String, Double> expected = scanned(query.colour(), query.within(), query.share());
            Map<String, Double> got = new HashMap<>();
            long pages = 1 + (expected.size() / 200);
            for (int page = 1; page <= pages; page++) {
                SearchResult result = index.search(query.withPage(page));
                assertThat(result.total()).isEqualTo(expected.size());
                result.hits().forEach(hit -> got.put(hit.card().number(), hit.distance()));
            }
            assertThat(got).isEqualTo(expected);
            assertThat(index.search(query.withSort(Order.NUMBER)).total()).isEqualTo(expected.size());
            found += expected.size();
        }
        assertThat(found).isGreaterThan(10_000);
    }

    @Test
    void resultsComeNearestFirstWithShareAndColour() {
        PieceQuery query = PieceQuery.EVERYTHING.withColours(near(new Lab(40, -4, -22), 12, 0));
        List<Hit> hits = index.search(query).hits();
        assertThat(hits).isSortedAccordingTo(Comparator.comparing(Hit::distance));
        for (Hit hit : hits) {
            assertThat(Ciede2000.difference(query.colour(), hit.nearest())).isEqualTo(hit.distance());
            double sum = PALETTES.get(hit.card().number()).stream()
                    .filter(colour -> Ciede2000.difference(query.colour(), colour.colour()) <= 12)
                    .mapToDouble(PaletteColour::share)
                    .sum();
            assertThat(hit.share()).isCloseTo(sum, within(1e-9));
        }
    }

    @Test
    void whatLiesAroundTheClothIsFoundOnlyWhereAnythingInThePhotographIsAskedFor() {
        Lab wall = new Lab(86, 1, 7);
        Lab cloth = new Lab(21, 30, -60);
        Photo photo = Demo.photo("hung", List.of(new PaletteColour(wall, 0.6), new PaletteColour(cloth, 0.4)));
        archive.cloths()
                .keep(
                        photo.digest(),
                        List.of(),
                        new SeenCloth(
                                new ClothOutline(
                                        Edge.FOUND,
                                        Region.rectangle(0.2, 0.2, 0.8, 0.8).corners(),
                                        1),
                                List.of(new PaletteColour(cloth, 1))));
        Demo.save(archive, Kinds.PHOTO, photo);
        Demo.save(
                archive,
                Kinds.PIECE,
                Demo.piece("X24-002", "", null, Status.KEPT, "2024").withPhotos(List.of(Demo.front(photo, "", 1))));
        PieceQuery hung = PieceQuery.EVERYTHING.withText("X24-002");

        assertThat(index.search(hung.withColours(near(cloth, 1, 0.9))).total()).isEqualTo(1);
        assertThat(index.search(hung.withColours(near(wall, 1, 0))).total()).isZero();
        ColourChoice anywhere = new ColourChoice(List.of(wall), Map.of(), "", 1.0, 0.5, true);
        assertThat(index.search(hung.withColours(anywhere)).total()).isEqualTo(1);
        assertThat(index.search(hung.withColours(new ColourChoice(List.of(cloth), Map.of(), "", 1.0, 0.5, true)))
                        .total())
                .isZero();
        Demo.withdraw(archive, Kinds.PIECE, "X24-002");
    }

    @Test
    void aNamedColourCountsWithItsShareOnlyWithoutAPaletteAndTheNewestStateSpeaks() {
        Lab was = new Lab(62, -7, -18);
        Lab now = new Lab(30, 40, 30);
        Photo before = Demo.photo("before", List.of(new PaletteColour(was, 0.9)));
        Photo after = Demo.photo("after", List.of());
        Demo.allCloth(archive, before);
        Demo.save(archive, Kinds.PHOTO, before);
        Demo.save(archive, Kinds.PHOTO, after);
        Demo.save(
                archive,
                Kinds.PIECE,
                Demo.piece("X24-001", "", null, Status.KEPT, "2024")
                        .withPhotos(
                                List.of(Demo.front(before, "", 1), Demo.front(after, "", 2, Demo.ground(now, 0.7)))));
        PieceQuery red = PieceQuery.EVERYTHING.withText("X24-001").withColours(near(now, 1, 0.6));
        assertThat(index.search(red).hits().get(0).share()).isEqualTo(0.7);
        assertThat(index.search(red.withColours(near(was, 1, 0))).total()).isZero();
        assertThat(index.search(red.withColours(near(now, 1, 0.8))).total()).isZero();
        Demo.change(
                archive,
                "X24-001",
                piece -> piece.withPhotos(List.of(Demo.front(after, "", 2, Demo.ground(now, null)))));
        assertThat(index.search(red.withColours(near(now, 1, 0))).hits().get(0).share())
                .isNull();
        assertThat(index.search(red.withColours(near(now, 1, 0.01))).total()).isZero();
        Demo.withdraw(archive, Kinds.PIECE, "X24-001");
    }

    private static ColourChoice near(Lab colour, double within, double share) {
        return new ColourChoice(List.of(colour), Map.of(), "", within, share);
    }
}
