package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.Photo;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Status;
import tenterbook.search.colour.PaletteDistance;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.ColourChoice;
import tenterbook.search.query.PieceQuery;

/** Every form of asking for colours against comparing every colour of every piece by the plain formula. */
class ColourChoiceSearchTest {
    private static final int PIECES = 900;

    private record Known(List<PaletteColour> palette, Map<ColourRole, Lab> regions) {
        List<Lab> all() {
            List<Lab> all = new ArrayList<>(regions.values());
            palette.forEach(colour -> all.add(colour.colour()));
            return all;
        }
    }

    @TempDir
    static Path folder;

    static Archive archive;
    static PieceIndex index;
    static final Map<String, Known> PIECES_BY_NUMBER = new TreeMap<>();

    @BeforeAll
    static void open() {
        archive = Demo.archive(folder);
        Random random = new Random(23);
        archive.ledger().write("Inês", act -> {
            for (int i = 0; i < PIECES; i++) {
                List<PaletteColour> palette = new ArrayList<>();
                for (int j = 0; j < 6 && i % 50 != 0; j++) {
                    palette.add(new PaletteColour(colour(random), 0.025 + random.nextDouble() * 0.13));
                }
                Map<ColourRole, Lab> regions = new LinkedHashMap<>();
                List<ColourRegion> named = new ArrayList<>();
                for (ColourRole role : ColourRole.values()) {
                    if (random.nextInt(3) > 0) {
                        Lab lab = colour(random);
                        regions.put(role, lab);
                        named.add(new ColourRegion(role, "", lab, null, null, false));
                    }
                }
                Photo photo = Demo.photo("p" + i, palette);
                String number = "V24-%04d".formatted(i);
                PIECES_BY_NUMBER.put(number, new Known(palette, regions));
                Demo.allCloth(archive, photo);
                act.create(Kinds.PHOTO, photo);
                act.create(
                        Kinds.PIECE,
                        Demo.piece(number, i % 2 == 0 ? "tide" : "moor", null, Status.KEPT, "2024")
                                .withPhotos(
                                        List.of(Demo.front(photo, "front", 1, named.toArray(ColourRegion[]::new)))));
            }
            return null;
        });
        index = PieceIndex.open(archive);
        assertThat(index.await(Duration.ofSeconds(60))).isTrue();
    }

    @AfterAll
    static void close() {
        index.close();
        archive.close();
    }

    /** Spread around a few dyes, undyed greys among them, some quite grey. */
    private static Lab colour(Random random) {
        double[][] dyes = {{40, -4, -23}, {43, 39, 27}, {88, 0, 8}, {30, 12, -45}, {50, 0, 0}};
        double[] near = dyes[random.nextInt(dyes.length)];
        if (random.nextInt(20) == 0) {
            return new Lab(random.nextDouble() * 100, 0, 0);
        }
        return new Lab(
                Math.max(0, Math.min(100, near[0] + random.nextGaussian() * 14)),
                near[1] + random.nextGaussian() * 9,
                near[2] + random.nextGaussian() * 9);
    }

    private static double nearest(Lab asked, List<Lab> colours) {
        return colours.stream()
                .mapToDouble(other -> Ciede2000.difference(asked, other))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Map<String, Double> scanned(ColourChoice choice) {
        double within = choice.within() == null ? 10 : choice.within();
        Map<String, Double> found = new HashMap<>();
        PIECES_BY_NUMBER.forEach((number, known) -> {
            double worst = 0;
            boolean enough = true;
            for (Lab asked : choice.anywhere()) {
                worst = Math.max(worst, nearest(asked, known.all()));
                double share = 0;
                for (PaletteColour colour : known.palette()) {
                    share += Ciede2000.difference(asked, colour.colour()) <= within ? colour.share() : 0;
                }
                enough &= choice.share() == 0 || share >= choice.share() - 1e-6;
            }
            for (Map.Entry<ColourRole, Lab> asked : choice.regions().entrySet()) {
                Lab there = known.regions().get(asked.getKey());
                boolean beside = asked.getKey() != ColourRole.LOCAL
                        && choice.regions().keySet().containsAll(List.of(ColourRole.GROUND, ColourRole.RESIST));
                List<Lab> others = beside ? known.all() : List.of();
                worst = Math.max(worst, nearest(asked.getValue(), there == null ? others : List.of(there)));
            }
            if (worst <= within && enough) {
                found.put(number, worst);
            }
        });
        return found;
    }

    /** Every hit in the order shown, over all pages. */
    private static Map<String, Double> everyHit(PieceQuery query) {
        Map<String, Double> got = new LinkedHashMap<>();
        long total = Long.MAX_VALUE;
        for (int page = 1; got.size() < total; page++) {
            SearchResult result = index.search(query.withSize(150).withPage(page));
            total = result.total();
            assertThat(result.hits()).as("page %d of %s", page, query).hasSizeBetween(total == 0 ? 0 : 1, 150);
            result.hits()
                    .forEach(hit -> assertThat(got.put(hit.card().number(), hit.distance()))
                            .isNull());
        }
        return got;
    }

    private static int check(ColourChoice choice) {
        Map<String, Double> expected = scanned(choice);
        Map<String, Double> got = everyHit(PieceQuery.EVERYTHING.withColours(choice));
        assertThat(got).as("%s", choice).isEqualTo(expected);
        assertThat(new ArrayList<>(got.values())).isSorted();
        Map<String, Double> tide =
                everyHit(PieceQuery.EVERYTHING.withText("tide").withColours(choice));
        assertThat(tide.keySet())
                .allMatch(number -> Integer.parseInt(number.substring(4)) % 2 == 0)
                .hasSize((int) expected.keySet().stream()
                        .filter(number -> Integer.parseInt(number.substring(4)) % 2 == 0)
                        .count());
        return expected.size();
    }

    @Test
    void oneColourIsFoundWithoutLossForEveryTolerance() {
        Random random = new Random(1);
        int found = 0;
        for (int within = 1; within <= 20; within++) {
            for (int i = 0; i < 4; i++) {
                double share = i == 3 ? 0.05 + random.nextDouble() * 0.3 : 0;
                found += check(new ColourChoice(List.of(colour(random)), Map.of(), "", (double) within, share));
            }
        }
        assertThat(found).isGreaterThan(4000);
    }

    @Test
    void severalColoursAndNamedRegionsAreFoundWithoutLossForEveryTolerance() {
        Random random = new Random(2);
        int found = 0;
        for (int within = 1; within <= 20; within++) {
            for (int i = 0; i < 2; i++) {
                double limit = within;
                found += check(new ColourChoice(
                        List.of(colour(random), colour(random)), Map.of(), "", limit, i == 0 ? 0 : 0.04));
                found += check(new ColourChoice(
                        List.of(),
                        Map.of(ColourRole.GROUND, colour(random), ColourRole.LOCAL, colour(random)),
                        "",
                        limit,
                        0));
                found += check(new ColourChoice(List.of(), Map.of(ColourRole.RESIST, colour(random)), "", limit, 0));
                found += check(new ColourChoice(
                        List.of(colour(random)), Map.of(ColourRole.GROUND, colour(random)), "", limit, 0));
            }
        }
        assertThat(found).isGreaterThan(1000);
    }

    /** By role where a person named that part, else anywhere on the cloth. */
    @Test
    void aGroundBesideAResistIsFoundWithoutLossForEveryTolerance() {
        Random random = new Random(4);
        int found = 0;
        for (int within = 1; within <= 20; within++) {
            for (int i = 0; i < 3; i++) {
                Map<ColourRole, Lab> pair =
                        new HashMap<>(Map.of(ColourRole.GROUND, colour(random), ColourRole.RESIST, colour(random)));
                if (i == 2) {
                    pair.put(ColourRole.LOCAL, colour(random));
                }
                found += check(new ColourChoice(List.of(), pair, "", (double) within, 0));
            }
        }
        assertThat(found).isGreaterThan(300);
    }

    /** The measure of {@link PaletteDistance}, written down once more from its description. */
    private static double paletteDistance(Known one, Known other) {
        return (oneWay(weights(one), weights(other)) + oneWay(weights(other), weights(one))) / 2;
    }

    private static double oneWay(Map<Lab, Double> from, Map<Lab, Double> to) {
        double sum = 0;
        for (Map.Entry<Lab, Double> colour : from.entrySet()) {
            sum += colour.getValue() * nearest(colour.getKey(), List.copyOf(to.keySet()));
        }
        return sum;
    }

    private static Map<Lab, Double> weights(Known known) {
        Map<Lab, Double> weights = new LinkedHashMap<>();
        double sum = known.palette().stream().mapToDouble(PaletteColour::share).sum();
        known.palette().forEach(colour -> weights.put(colour.colour(), colour.share() / sum));
        if (known.palette().isEmpty()) {
            known.regions()
                    .values()
                    .forEach(lab -> weights.put(lab, 1.0 / known.regions().size()));
        }
        return weights;
    }

    @Test
    void alikeMeansNearestPaletteFirstAndNeverThePieceItself() {
        Random random = new Random(3);
        for (int i = 0; i < 12; i++) {
            String number = "V24-%04d".formatted(i == 0 ? 50 : random.nextInt(PIECES));
            Known known = PIECES_BY_NUMBER.get(number);
            if (known.all().isEmpty()) {
                continue;
            }
            Map<String, Double> all = new HashMap<>();
            PIECES_BY_NUMBER.forEach((other, its) -> {
                if (!other.equals(number) && !its.all().isEmpty()) {
                    all.put(other, paletteDistance(known, its));
                }
            });
            ColourChoice like = new ColourChoice(List.of(), Map.of(), number, null, 0);
            SearchResult result = index.search(PieceQuery.EVERYTHING.withColours(like));
            assertThat(result.total()).isEqualTo(all.size());
            List<Double> nearest = all.values().stream().sorted().limit(24).toList();
            for (int rank = 0; rank < 24; rank++) {
                Hit hit = result.hits().get(rank);
                assertThat(hit.distance()).isCloseTo(nearest.get(rank), org.assertj.core.api.Assertions.within(1e-9));
                assertThat(all.get(hit.card().number()))
                        .isCloseTo(hit.distance(), org.assertj.core.api.Assertions.within(1e-9));
            }
            double within = Math.round(nearest.get(23) * 100) / 100.0 + 0.005;
            Map<String, Double> near = everyHit(
                    PieceQuery.EVERYTHING.withColours(new ColourChoice(List.of(), Map.of(), number, within, 0)));
            assertThat(near.keySet())
                    .containsExactlyInAnyOrderElementsOf(all.entrySet().stream()
                            .filter(entry -> entry.getValue() <= within)
                            .map(Map.Entry::getKey)
                            .toList());
        }
    }

    @Test
    void aPieceThatIsNotThereOrHasNoColourIsLikeNothingAndTheAnswerSaysWhy() {
        SearchResult result = index.search(PieceQuery.of(Map.of("like", List.of("X99-001"))));
        assertThat(result.total()).isZero();
        assertThat(result.note()).contains("X99-001").contains("expected").contains("Check the number");
        assertThat(index.search(PieceQuery.EVERYTHING).note()).isEmpty();
    }

    @Test
    void aWholePaletteAndSingleColoursAreNotAskedTogether() {
        assertThatThrownBy(() -> PieceQuery.of(Map.of("like", List.of("V24-0001"), "ground", List.of("40,-4,-23"))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("like")
                .hasMessageContaining("without “colour”, “ground”, “local” and “resist”")
                .hasMessageContaining("V24-0001");
    }

    @Test
    void everyValueOfAColourIsReadAndABadOneNamed() {
        PieceQuery query = PieceQuery.of(Map.of(
                "colour", List.of("40,-4,-23", "", "#ffffff", "40,-4,-23"),
                "local", List.of("30,12,-45"),
                "within", List.of("4")));
        assertThat(query.colours().anywhere()).containsExactly(new Lab(40, -4, -23), new Lab(100, 0, 0));
        assertThat(query.colours().regions()).containsExactly(Map.entry(ColourRole.LOCAL, new Lab(30, 12, -45)));
        assertThat(query.within()).isEqualTo(4);
        for (String name : List.of("colour", "ground", "local", "resist")) {
            assertThatThrownBy(() -> PieceQuery.of(Map.of(name, List.of("34,-2"))))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("“" + name + "” should be L,a,b")
                    .hasMessageContaining("“34,-2”");
        }
        assertThatThrownBy(() -> PieceQuery.of(Map.of("ground", List.of("40,0,0", "50,0,0"))))
                .hasMessageContaining("once");
        assertThatThrownBy(() -> PieceQuery.of(
                        Map.of("colour", List.of("1,0,0", "2,0,0", "3,0,0", "4,0,0", "5,0,0", "6,0,0", "7,0,0"))))
                .hasMessageContaining("at most 6 colours");
    }
}
