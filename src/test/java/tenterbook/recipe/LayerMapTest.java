package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.recipe.Fold.Axis;
import tenterbook.recipe.Fold.Style;

class LayerMapTest {
    /** Every scheme of up to three folds with small panels. */
    static Stream<List<Fold>> schemes() {
        List<Fold> folds = new ArrayList<>();
        for (Axis axis : Axis.values()) {
            for (Style style : Style.values()) {
                for (int panels = 2; panels <= 5; panels++) {
                    if (style != Style.HALVING || Integer.bitCount(panels) == 1) {
                        folds.add(new Fold(axis, style, panels));
                    }
                }
            }
        }
        List<List<Fold>> schemes = new ArrayList<>(List.of(List.of()));
        for (Fold a : folds) {
            schemes.add(List.of(a));
            for (Fold b : folds) {
                schemes.add(List.of(a, b));
                folds.stream().filter(c -> c.panels() < 5).forEach(c -> schemes.add(List.of(a, b, c)));
            }
        }
        return schemes.stream();
    }

    /**
     * Against a second way to the same answer: square panels of paper turned about crease lines in space. It shares no
     * code and no idea with the map, which rearranges lists of layers.
     */
    @Test
    void everySchemeAgreesWithPaperTurnedAboutItsCreases() {
        assertThat(schemes()).hasSizeGreaterThan(5000).allSatisfy(folds -> {
            List<LayerMap.Cell> expected = PaperFolding.fold(folds);
            assertThat(LayerMap.of(folds).cells()).as("%s", folds).isEqualTo(expected);
        });
    }

    @Test
    void everyPanelLiesInTheStackExactlyOnceAndIsMirroredAsItIsTurned() {
        assertThat(schemes()).allSatisfy(folds -> {
            LayerMap map = LayerMap.of(folds);
            assertThat(map.layers()).isEqualTo(map.rows() * map.columns());
            assertThat(map.cells().stream().map(c -> c.row() * map.columns() + c.column()))
                    .doesNotHaveDuplicates()
                    .hasSize(map.layers())
                    .allMatch(place -> place >= 0 && place < map.layers());
            assertThat(map.opened().stream().map(c -> c.row() * map.columns() + c.column()))
                    .isSorted();
            // A sheet cannot be mirrored without being turned over: one reflection of the image for each turning.
            assertThat(map.cells()).allMatch(c -> c.faceUp() == (c.mirroredLength() == c.mirroredWidth()));
        });
    }

    static Stream<Fold> accordions() {
        return Stream.of(Axis.values())
                .flatMap(axis -> Stream.of(2, 3, 4, 7, 12, 64).map(panels -> new Fold(axis, Style.ACCORDION, panels)));
    }

    @ParameterizedTest
    @MethodSource("accordions")
    void neighboursInAnAccordionLieOnEachOtherFaceToFaceAndMirrored(Fold fold) {
        List<LayerMap.Cell> cells = LayerMap.of(List.of(fold)).cells();
        for (int i = 1; i < cells.size(); i++) {
            LayerMap.Cell below = cells.get(i - 1);
            LayerMap.Cell above = cells.get(i);
            assertThat(above.row() + above.column()).isEqualTo(below.row() + below.column() + 1);
            assertThat(above.faceUp()).isNotEqualTo(below.faceUp());
            boolean alongLength = fold.axis() == Axis.LENGTH;
            assertThat(above.mirroredLength() != below.mirroredLength()).isEqualTo(alongLength);
            assertThat(above.mirroredWidth() != below.mirroredWidth()).isEqualTo(!alongLength);
        }
    }

    private static List<Integer> rows(Style style, int panels) {
        return LayerMap.of(List.of(new Fold(Axis.LENGTH, style, panels))).cells().stream()
                .map(cell -> cell.row() + 1)
                .toList();
    }

    @Test
    void halvingGivesTheOrdersOfFoldedPaper() {
        // Worked out with a strip of paper: fold the free half over, and the free half over again.
        assertThat(rows(Style.HALVING, 2)).containsExactly(1, 2);
        assertThat(rows(Style.HALVING, 4)).containsExactly(1, 4, 3, 2);
        assertThat(rows(Style.HALVING, 8)).containsExactly(1, 8, 5, 4, 3, 6, 7, 2);
    }

    @Test
    void rollingGivesTheOrdersOfAPaperStripRolledFlat() {
        // Worked out with a strip of paper: turn the free end over, and over, until the first panel is the last below.
        assertThat(rows(Style.ROLLED, 2)).containsExactly(1, 2);
        assertThat(rows(Style.ROLLED, 3)).containsExactly(1, 3, 2);
        assertThat(rows(Style.ROLLED, 4)).containsExactly(1, 3, 4, 2);
        assertThat(rows(Style.ROLLED, 5)).containsExactly(1, 3, 5, 4, 2);
    }

    @Test
    void noFoldIsOneLayerLyingFaceUp() {
        assertThat(LayerMap.of(List.of()).cells()).containsExactly(new LayerMap.Cell(1, 0, 0, true, false, false));
    }

    @Test
    void theGreatestSchemeIsFoldedInGoodTime() {
        List<Fold> folds = List.of(new Fold(Axis.LENGTH, Style.HALVING, 32), new Fold(Axis.WIDTH, Style.ACCORDION, 32));
        assertThat(LayerMap.of(folds).layers()).isEqualTo(LayerMap.MOST_LAYERS);
    }
}
