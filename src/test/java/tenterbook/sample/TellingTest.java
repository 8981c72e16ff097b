package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.board.BoardPair;
import tenterbook.measure.Digest;
import tenterbook.piece.MadeIn;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;
import tenterbook.recipe.LayerMap;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

class TellingTest {
    private static final List<Telling> ALL = Telling.all();

    private static PiecePhoto untaken(ObjectNode photo) {
        byte[] name = photo.get("file").textValue().getBytes(StandardCharsets.UTF_8);
        return new PiecePhoto(
                Digest.of(name), PhotoRole.OTHER, photo.path("caption").asText(), 1, List.of());
    }

    private static <T> T read(Part<T> part, Telling telling) {
        return SampleRecords.read(part, telling.entered().deepCopy());
    }

    private static BoardPair board(Telling telling) {
        return SampleRecords.read(
                BoardPairRecord.BOARD_PAIR,
                SampleRecords.withHoles(telling.entered().deepCopy()));
    }

    private static Map<String, Clamping> clampings() {
        Map<String, Clamping> newest = new LinkedHashMap<>();
        for (Telling telling : ALL) {
            if (telling.kind().equals("clamping")) {
                Clamping clamping = read(ClampingRecord.CLAMPING, telling);
                newest.put(clamping.id().value(), clamping);
            }
        }
        return newest;
    }

    private static Map<String, Piece> pieces() {
        Map<String, Piece> newest = new LinkedHashMap<>();
        for (Telling telling : ALL) {
            if (telling.kind().equals("piece")) {
                Piece piece = SampleRecords.read(
                        PieceRecord.PIECE,
                        SampleRecords.withPhotographs(telling.entered().deepCopy(), TellingTest::untaken));
                newest.put(piece.number().value(), piece);
            }
        }
        return newest;
    }

    @Test
    void everythingToldIsReadAndNothingIsToldTwiceAtOnce() {
        for (Telling telling : ALL) {
            switch (telling.kind()) {
                case "studio" -> read(StudioRecords.STUDIO, telling);
                case "party" -> read(StudioRecords.PARTY, telling);
                case "board-pair" -> board(telling);
                case "cloth" -> read(MaterialRecords.CLOTH, telling);
                case "lot" -> read(MaterialRecords.LOT, telling);
                default -> assertThat(telling.kind()).isIn("clamping", "piece", "examination", "agreement", "paper");
            }
        }
        assertThat(clampings()).hasSize(24);
        assertThat(pieces()).hasSize(23);
        assertThat(ALL.stream().map(Telling::at)).doesNotHaveDuplicates();
        assertThat(ALL.get(0).at()).isAfter(Instant.parse("2024-01-01T00:00:00Z"));
        assertThat(ALL.get(ALL.size() - 1).at()).isBefore(Instant.parse("2025-01-01T00:00:00Z"));
    }

    /** The recipe and the renderer must tell of the same folding, panel by panel. */
    @Test
    void foldsMakeTheLayersThatThePhotographsShow() {
        Map<String, Clamping> clampings = clampings();
        for (Piece piece : pieces().values()) {
            for (MadeIn made : piece.made()) {
                Clamping clamping = clampings.get(made.clamping().value());
                SampleScenes.Cloth cloth =
                        SampleScenes.cloths().get(piece.number().value());
                LayerMap map = LayerMap.of(clamping.fold().folds());
                boolean onItsSide = clamping.fold().note().contains("on its side");
                assertThat(map.columns()).isEqualTo(onItsSide ? cloth.down() : cloth.across());
                for (LayerMap.Cell cell : map.cells()) {
                    int column = onItsSide ? cell.row() : cell.column();
                    int row = onItsSide ? cell.column() : cell.row();
                    int drawn = row * cloth.across() + (row % 2 == 0 ? column : cloth.across() - 1 - column) + 1;
                    assertThat(cell.layer())
                            .as("%s at %s", piece.number(), cell)
                            .isEqualTo(drawn);
                }
                assertThat(clamping.fold().layersCounted().low())
                        .as("layers of %s", piece.number())
                        .isEqualTo(map.layers());
            }
        }
    }

    @Test
    void cutsAreAsLargeAsThePanelsTheyFoldToAndWeighWhatTheirClothWeighs() {
        Map<String, Double> weights = Map.of("SH", 45.0, "SO", 28.0, "LV", 95.0, "CL", 72.0, "HG", 120.0, "WC", 130.0);
        Map<String, Clamping> clampings = clampings();
        for (Piece piece : pieces().values()) {
            SampleScenes.Cloth cloth = SampleScenes.cloths().get(piece.number().value());
            Motif motif = Motifs.of(cloth.boardState());
            double area = (cloth.across() * motif.widthMm() + 26) * (cloth.down() * motif.heightMm() + 26) / 1_000_000;
            for (MadeIn made : piece.made()) {
                Cut cut = clampings.get(made.clamping().value()).cuts().get(0);
                double entered = cut.length().low() * cut.width().low() / 10_000;
                assertThat(entered).as("m² of %s", piece.number()).isCloseTo(area, within(0.02));
                assertThat(cut.weighed().low())
                        .as("g of %s", piece.number())
                        .isCloseTo(area * weights.get(cut.cloth().value()), within(1));
            }
        }
    }

    private static org.assertj.core.data.Offset<Double> within(double offset) {
        return org.assertj.core.data.Offset.offset(offset);
    }

    @Test
    void whatIsWeighedInAgreesWithThePercentOfTheCloth() {
        int compared = 0;
        for (Clamping clamping : clampings().values()) {
            double cloth = clamping.cuts().get(0).weighed().low();
            for (Step step : clamping.steps()) {
                for (Charge charge : step.charges()) {
                    if (charge.weighed().known()) {
                        assertThat(charge.weighed().low())
                                .as("%s in %s", charge.lot(), clamping.id())
                                .isCloseTo(charge.wof().low() * cloth / 100, within(0.5));
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(20);
    }

    /** The dips of the scenario; a range must hold the number that the picture was drawn for. */
    @Test
    void dipsAreThoseThatTheColoursWereDrawnFor() {
        Map<String, Integer> drawn = new HashMap<>(Map.of("C24-001", 2, "C24-002", 4, "C24-003", 9, "C24-004", 3));
        drawn.putAll(Map.of("C24-005", 3, "C24-006", 6, "C24-007", 6, "C24-008", 12, "C24-009", 6, "C24-014", 10));
        drawn.putAll(Map.of("C24-015", 4, "C24-020", 3, "C24-021", 1, "C24-022", 4, "C24-023", 12, "C24-024", 18));
        Set<String> dipped = new TreeSet<>();
        for (Clamping clamping : clampings().values()) {
            for (Step step : clamping.steps()) {
                if (step.kind() == StepKind.DIPS) {
                    dipped.add(clamping.id().value());
                    double n = drawn.get(clamping.id().value());
                    assertThat(step.dips().count().low()).isLessThanOrEqualTo(n);
                    assertThat(step.dips().count().high()).isGreaterThanOrEqualTo(n);
                    if (!step.dips().dips().isEmpty()) {
                        assertThat(step.dips().dips()).hasSize((int) n);
                    }
                }
            }
        }
        assertThat(dipped).isEqualTo(drawn.keySet());
    }

    @Test
    void aRecutBoardIsToldTwice() {
        List<Integer> states = new ArrayList<>();
        for (Telling telling : ALL) {
            if (telling.kind().equals("board-pair")) {
                BoardPair board = board(telling);
                if (board.id().value().equals("B02")) {
                    states.add(board.states().size());
                }
            }
        }
        assertThat(states).containsExactly(1, 2);
    }

    @Test
    void everyPhotographIsCaptionedAndNoneIsForgotten() {
        List<PiecePhoto> photos = pieces().values().stream()
                .flatMap(piece -> piece.photos().stream())
                .toList();
        assertThat(photos).allSatisfy(photo -> assertThat(photo.caption()).hasSizeBetween(30, 300));
        assertThat(photos.stream().map(photo -> photo.photo()).collect(Collectors.toSet()))
                .isEqualTo(SampleScenes.shots().stream()
                        .map(shot -> Digest.of(shot.file().getBytes(StandardCharsets.UTF_8)))
                        .collect(Collectors.toSet()));
    }

    @Test
    void aMisspeltFieldIsRefused() throws Exception {
        ObjectNode slip = (ObjectNode) new ObjectMapper().readTree("{\"id\":\"x\",\"nmae\":\"y\"}");
        assertThatThrownBy(() -> SampleRecords.read(StudioRecords.PARTY, slip))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("nmae");
    }
}
