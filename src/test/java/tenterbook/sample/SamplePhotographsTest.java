package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tenterbook.measure.Digest;

class SamplePhotographsTest {
    private static final Map<String, SampleScenes.Cloth> CLOTHS = SampleScenes.cloths();
    private static final List<SampleScenes.Shot> SHOTS = SampleScenes.shots();

    @Test
    void everyClothIsTakenWholeAndClose() {
        assertThat(CLOTHS).hasSize(25);
        Map<String, List<String>> views = SHOTS.stream()
                .filter(s -> !s.ofBoard())
                .collect(Collectors.groupingBy(
                        SampleScenes.Shot::subject, Collectors.mapping(SampleScenes.Shot::view, Collectors.toList())));
        assertThat(views.keySet()).isEqualTo(CLOTHS.keySet());
        views.forEach((subject, taken) -> assertThat(taken)
                .as(subject)
                .containsAll(subject.endsWith("-later") ? List.of("FRONT") : List.of("FRONT", "DETAIL")));
    }

    @Test
    void everyBoardStateIsTakenOnce() {
        assertThat(SHOTS.stream().filter(SampleScenes.Shot::ofBoard).map(SampleScenes.Shot::subject))
                .containsExactlyInAnyOrderElementsOf(Motifs.STATES);
    }

    @Test
    void namesDifferAndLayersExist() {
        assertThat(SHOTS.stream().map(SampleScenes.Shot::file)).doesNotHaveDuplicates();
        assertThat(SHOTS.stream().filter(s -> s.view().equals("LAYER"))).allSatisfy(s -> {
            SampleScenes.Cloth cloth = CLOTHS.get(s.subject());
            assertThat(s.layer()).isBetween(1, cloth.across() * cloth.down());
        });
    }

    @Test
    void twoPhotographsCarryAPositionAndEveryTelephoneOrientationOccurs() {
        assertThat(SHOTS.stream().filter(s -> s.position() != null)).hasSize(2);
        assertThat(SHOTS.stream().map(SampleScenes.Shot::orientation).collect(Collectors.toSet()))
                .containsExactlyInAnyOrder(1, 3, 6, 8);
    }

    @Test
    void drawingTheTableAgainGivesTheSameBytesWithinTheirSize() throws Exception {
        for (String file : List.of("V24-007-front.jpg", "B05-board.jpg")) {
            SampleScenes.Shot shot = SHOTS.stream()
                    .filter(s -> s.file().equals(file))
                    .findFirst()
                    .orElseThrow();
            byte[] once = SamplePhotographs.jpeg(
                    SamplePhotographs.develop(CLOTHS, shot).image(), shot);
            byte[] again = SamplePhotographs.jpeg(
                    SamplePhotographs.develop(CLOTHS, shot).image(), shot);
            assertThat(Digest.of(again)).as(file).isEqualTo(Digest.of(once));
            assertThat(once.length).as(file).isBetween(100_000, 300_000);
        }
    }
}
