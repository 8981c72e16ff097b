package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

/** The stated errors measured anew, on the patches of other people's photographs; skipped where these are not at hand. */
class StatedErrorTest {
    private static final String REFUSED = "industrial camera";
    private static final int NEUTRAL_5 = 22;
    private static final int WHITE = 19;
    private static final int BLACK = 24;
    private static final Map<String, ChartReference> TABLES = new TreeMap<>();

    /** A photograph of a chart: the mean linear light of its good patches, by number. */
    private record Seen(String photo, String camera, Map<Integer, LinearRgb> patches) {}

    /** The error of each patch that was judged, and its corrected colour. */
    private record Judged(Seen seen, Map<Integer, Double> errors, Map<Integer, Lab> colours) {}

    private final List<Seen> photographs = new ArrayList<>();

    @BeforeEach
    void read() throws IOException {
        String reference = System.getProperty("reference.folder", "");
        assumeTrue(!reference.isEmpty(), "Skipped: -Dreference.folder names no folder");
        Map<String, Seen> found = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Path.of(reference, "chart_patches_seen.csv"))) {
            String[] cells = line.split(",", -1);
            if (!cells[0].equals("photo")) {
                Seen seen = found.computeIfAbsent(cells[0], photo -> new Seen(photo, cells[1], new TreeMap<>()));
                if (cells[6].isEmpty()) {
                    seen.patches.put(
                            Integer.parseInt(cells[2]),
                            new LinearRgb(
                                    Double.parseDouble(cells[3]),
                                    Double.parseDouble(cells[4]),
                                    Double.parseDouble(cells[5])));
                }
            }
        }
        photographs.addAll(found.values());
    }

    @Test
    void eachMethodsFiguresAreThoseOfThePhotographs() {
        for (Calibration how : List.of(Calibration.GREY_CARD, Calibration.WHITE_AND_BLACK, Calibration.CHART)) {
            StatedError stated = StatedError.of(how);
            List<Judged> judged = judged(how, seen -> !seen.camera.equals(REFUSED));
            List<Double> errors = errors(judged, camera -> true);
            List<Double> pairs = pairs(judged);
            System.out.printf(
                    "%s: %d patches, half %.2f, nine in ten %.2f; stated nine in ten holds for %.0f %%; two photographs: "
                            + "%d pairs of patches, half %.2f, nine in ten %.2f%n",
                    how,
                    errors.size(),
                    quantile(errors, 0.5),
                    quantile(errors, 0.9),
                    100 * share(errors, stated.nineInTen()),
                    pairs.size(),
                    quantile(pairs, 0.5),
                    quantile(pairs, 0.9));
            assertThat(errors).hasSize(stated.patches());
            assertThat(judged.stream().map(each -> each.seen.camera).distinct()).hasSize(stated.cameras());
            assertThat(quantile(errors, 0.5)).isBetween(stated.half() - 0.2, stated.half() + 0.05);
            assertThat(quantile(errors, 0.9)).isBetween(stated.nineInTen() - 0.2, stated.nineInTen() + 0.05);
            assertThat(quantile(pairs, 0.9)).isBetween(stated.betweenTwo() - 2, stated.betweenTwo() + 0.05);
        }
    }

    @Test
    void leavingOneCameraOutNineInTenHoldsFor85To95InAHundred() {
        for (Calibration how : List.of(Calibration.GREY_CARD, Calibration.WHITE_AND_BLACK, Calibration.CHART)) {
            List<Judged> judged = judged(how, seen -> !seen.camera.equals(REFUSED));
            double held = 0;
            int patches = 0;
            for (String camera :
                    judged.stream().map(each -> each.seen.camera).distinct().toList()) {
                double nineInTen = quantile(errors(judged, other -> !other.equals(camera)), 0.9);
                List<Double> mine = errors(judged, camera::equals);
                double share = share(mine, nineInTen);
                System.out.printf(
                        "%s without %s: %.1f holds for %.0f %% of its %d patches%n",
                        how, camera, nineInTen, 100 * share, mine.size());
                held += share * mine.size();
                patches += mine.size();
            }
            System.out.printf("%s: together %.0f %% of %d patches%n", how, 100 * held / patches, patches);
            assertThat(held / patches).as("%s", how).isBetween(0.85, 0.95);
        }
    }

    @Test
    void theGreenIndustrialCameraStatesItsOwnErrorsByACardAndItsChartIsRefused() {
        Seen seen = photographs.stream()
                .filter(each -> each.camera.equals(REFUSED))
                .findFirst()
                .orElseThrow();
        Correction card = Correction.byGrey(reading(seen, NEUTRAL_5), card(seen, NEUTRAL_5));
        List<Double> errors =
                List.copyOf(judged(Calibration.GREY_CARD, seen).errors.values());
        System.out.printf(
                "industrial camera: half %.2f, nine in ten %.2f%n", quantile(errors, 0.5), quantile(errors, 0.9));
        assertThat(errors).hasSize(StatedError.STRONG_CAST.patches());
        assertThat(card.halfError()).isCloseTo(quantile(errors, 0.5), within(0.2));
        assertThat(card.likelyError()).isCloseTo(quantile(errors, 0.9), within(0.2));
        assertThat(card.note()).contains("gains 2.8 times apart");
        for (ChartReference table : ChartReference.values()) {
            assertThat(fit(seen, table).meanHoldOut()).isGreaterThan(ChartCorrection.MOST_HOLD_OUT);
        }
        photographs.stream()
                .filter(each -> each != seen)
                .forEach(each -> assertThat(fit(each, table(each)).meanHoldOut())
                        .as(each.photo)
                        .isLessThan(ChartCorrection.MOST_HOLD_OUT));
    }

    private List<Judged> judged(Calibration how, Predicate<Seen> taken) {
        return photographs.stream()
                .filter(taken)
                .filter(seen -> how != Calibration.WHITE_AND_BLACK
                        || seen.patches.containsKey(WHITE) && seen.patches.containsKey(BLACK))
                .map(seen -> judged(how, seen))
                .toList();
    }

    private static Judged judged(Calibration how, Seen seen) {
        ChartReference table = table(seen);
        Judged judged = new Judged(seen, new TreeMap<>(), new TreeMap<>());
        if (how == Calibration.CHART) {
            ChartFit fit = fit(seen, table);
            List<Integer> numbers = List.copyOf(seen.patches.keySet());
            for (int i = 0; i < numbers.size(); i++) {
                judged.errors.put(numbers.get(i), fit.holdOut().get(i));
            }
            Correction correction =
                    new Correction(how, fit.matrix().rows(), Correction.NONE.offset(), fit.tone(), 5.0, 3.0, "");
            seen.patches.forEach((number, light) ->
                    judged.colours.put(number, correction.apply(light).lab()));
            return judged;
        }
        boolean grey = how == Calibration.GREY_CARD;
        Correction correction = grey
                ? Correction.byGrey(reading(seen, NEUTRAL_5), card(seen, NEUTRAL_5))
                : Correction.byWhiteAndBlack(
                        reading(seen, WHITE), card(seen, WHITE), reading(seen, BLACK), card(seen, BLACK));
        seen.patches.forEach((number, light) -> {
            if (grey ? number != NEUTRAL_5 : number != WHITE && number != BLACK) {
                Lab colour = correction.apply(light).lab();
                judged.colours.put(number, colour);
                judged.errors.put(number, Ciede2000.difference(colour, known(table, number)));
            }
        });
        return judged;
    }

    /** Each photograph by its grey patch and the chart in another one by the same camera, for every such pair. */
    private List<Judged> judgedByProfile() {
        List<Judged> judged = new ArrayList<>();
        for (Seen seen : photographs) {
            for (Seen chart : photographs) {
                if (chart != seen && chart.camera.equals(seen.camera)) {
                    ChartFit fit = fit(chart, table(chart));
                    CameraProfile profile = new CameraProfile(new Correction(
                            Calibration.CHART,
                            fit.matrix().rows(),
                            Correction.NONE.offset(),
                            fit.tone(),
                            5.0,
                            3.0,
                            ""));
                    judged.add(judged(profile.with(reading(seen, NEUTRAL_5), card(seen, NEUTRAL_5)), seen));
                }
            }
        }
        return judged;
    }

    private static Judged judged(Correction correction, Seen seen) {
        Judged judged = new Judged(seen, new TreeMap<>(), new TreeMap<>());
        seen.patches.forEach((number, light) -> {
            if (number != NEUTRAL_5) {
                Lab colour = correction.apply(light).lab();
                judged.colours.put(number, colour);
                judged.errors.put(number, Ciede2000.difference(colour, known(table(seen), number)));
            }
        });
        return judged;
    }

    /** In one of the five photographs the card alone was better. */
    @Test
    void aProfileOfTheSameCameraIsBetterThanTheCardAlone() {
        StatedError stated = StatedError.of(Calibration.CAMERA_PROFILE);
        List<Judged> judged = judgedByProfile();
        List<Judged> byCard = judged.stream()
                .map(each -> judged(Calibration.GREY_CARD, each.seen))
                .toList();
        List<Double> errors = errors(judged, camera -> true);
        List<Double> alone = errors(byCard, camera -> true);
        List<Double> pairs = pairs(judged);
        System.out.printf(
                "camera profile: %d comparisons, mean %.2f (card alone %.2f), half %.2f (%.2f), nine in ten %.2f (%.2f); two "
                        + "photographs: %d pairs of patches, nine in ten %.2f%n",
                errors.size(),
                mean(errors),
                mean(alone),
                quantile(errors, 0.5),
                quantile(alone, 0.5),
                quantile(errors, 0.9),
                quantile(alone, 0.9),
                pairs.size(),
                quantile(pairs, 0.9));
        assertThat(errors).hasSize(147);
        Map<String, Integer> patches = new TreeMap<>();
        judged.forEach(each -> patches.put(each.seen.photo, each.errors.size()));
        assertThat(patches.values().stream().mapToInt(n -> n).sum()).isEqualTo(stated.patches());
        assertThat(judged.stream().map(each -> each.seen.camera).distinct()).hasSize(stated.cameras());
        assertThat(mean(errors)).isLessThan(mean(alone) - 1);
        assertThat(quantile(errors, 0.5)).isBetween(stated.half() - 0.2, stated.half() + 0.05);
        assertThat(quantile(errors, 0.9)).isBetween(stated.nineInTen() - 0.2, stated.nineInTen() + 0.05);
        assertThat(quantile(pairs, 0.9)).isBetween(stated.betweenTwo() - 2, stated.betweenTwo() + 0.05);
        for (String camera : List.of("phone A", "phone B")) {
            double others = quantile(errors(judged, other -> !other.equals(camera)), 0.9);
            System.out.printf(
                    "camera profile without %s: %.1f holds for %.0f %% of its patches%n",
                    camera, others, 100 * share(errors(judged, camera::equals), others));
        }
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(e -> e).average().orElseThrow();
    }

    /** The chart's make is unknown: that table of the two which the fit agrees with better. */
    private static ChartReference table(Seen seen) {
        return TABLES.computeIfAbsent(seen.photo, photo -> better(seen));
    }

    private static ChartReference better(Seen seen) {
        ChartReference before = ChartReference.BEFORE_NOVEMBER_2014;
        ChartReference from = ChartReference.FROM_NOVEMBER_2014;
        return fit(seen, before).meanHoldOut() < fit(seen, from).meanHoldOut() ? before : from;
    }

    private static ChartFit fit(Seen seen, ChartReference table) {
        return ChartFit.of(
                List.copyOf(seen.patches.values()),
                seen.patches.keySet().stream()
                        .map(number -> known(table, number))
                        .toList());
    }

    private static Lab known(ChartReference table, int number) {
        return table.patches().get(number - 1).lab();
    }

    private static CardReading reading(Seen seen, int number) {
        return new CardReading(seen.patches.get(number), 0, 0, 0, 0, 1000);
    }

    private static KnownCard card(Seen seen, int number) {
        return new KnownCard("patch " + number, known(table(seen), number));
    }

    /** By how much the same patch differs between two photographs of one table. */
    private static List<Double> pairs(List<Judged> judged) {
        List<Double> pairs = new ArrayList<>();
        for (Judged one : judged) {
            for (Judged two : judged) {
                if (one.seen.photo.compareTo(two.seen.photo) < 0) {
                    one.colours.forEach((number, colour) -> {
                        if (two.colours.containsKey(number)) {
                            pairs.add(Ciede2000.difference(colour, two.colours.get(number)));
                        }
                    });
                }
            }
        }
        return pairs;
    }

    private static List<Double> errors(List<Judged> judged, Predicate<String> camera) {
        return judged.stream()
                .filter(each -> camera.test(each.seen.camera))
                .flatMap(each -> each.errors.values().stream())
                .toList();
    }

    private static double quantile(List<Double> values, double share) {
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.get((int) Math.ceil(share * sorted.size()) - 1);
    }

    private static double share(List<Double> values, double most) {
        return values.stream().filter(value -> value <= most).count() / (double) values.size();
    }
}
