package tenterbook.search.recognition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.board.BoardId;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.recipe.BoardUse;
import tenterbook.sample.RecognitionScene;
import tenterbook.search.recognition.Recognition.Level;
import tenterbook.search.recognition.Recognition.Place;

class RecogniserTest {
    private static final BoardUse NINE_SWIFTS = new BoardUse(new BoardId("B03"), "");

    @TempDir
    static Path folder;

    private static RenderedSet archive;
    private static RecognitionScene kept;
    private static List<RecognitionScene> twins;

    @BeforeAll
    static void photograph() throws IOException {
        kept = RecognitionScene.other("V24-008", false, 1).small();
        twins = RecognitionScene.twins("V24-008", 3, false, 1).stream()
                .map(RecognitionScene::small)
                .toList();
        archive = new RenderedSet(folder).with(List.of(kept)).with(twins.subList(0, 2));
    }

    private static Recognition asked(PhotoFeatures picture, Digest... without) {
        return new Recogniser(archive, () -> {}).recognise(picture, Set.of(without), Progress.UNWATCHED);
    }

    private static PhotoFeatures turned(RecognitionScene scene) throws IOException {
        return FeatureFinder.of(RenderedSet.pixels(RenderedSet.mirroredAndTurned(archive.picture(scene), 90)));
    }

    @Test
    void aMirroredAndTurnedPhotographIsPutToItsPiece() throws IOException {
        Recognition answer =
                asked(turned(RecognitionScene.other("V24-008", false, 2).small()));
        assertThat(answer.level()).isEqualTo(Level.THIS_PIECE);
        Recognition.Candidate first = answer.pieces().get(0);
        assertThat(first.piece().value()).isEqualTo("V24-008");
        assertThat(first.boards()).containsExactly(NINE_SWIFTS);
        assertThat(first.evidence().mirrored()).isTrue();
        assertThat(first.evidence().timesStrangers()).isGreaterThan(1);
        assertThat(first.evidence().places())
                .hasSizeGreaterThan(40)
                .allSatisfy(place -> assertThat(off(first.evidence().onPhotograph(), place))
                        .as("parts of the photograph from where it should lie")
                        .isLessThan(0.02));
    }

    private static double off(Homography onPhotograph, Place place) {
        return Math.hypot(
                onPhotograph.x(place.x(), place.y()) - place.photoX(),
                onPhotograph.y(place.x(), place.y()) - place.photoY());
    }

    @Test
    void aTwinIsNeverTakenForTheOtherPiece() throws IOException {
        Recognition absent = asked(archive.features(
                RecognitionScene.twins("V24-008", 3, false, 2).get(2).small()));
        assertThat(absent.level()).isEqualTo(Level.THIS_BOARD_PAIR);
        assertThat(absent.boards().get(0).board()).isEqualTo(NINE_SWIFTS);
        assertThat(absent.pieces()).as("what it may be").isNotEmpty();
    }

    @Test
    void aPieceOfOtherBoardsIsUnknown() throws IOException {
        Recognition stranger = asked(
                archive.features(RecognitionScene.other("V24-016", false, 2).small()));
        assertThat(stranger.level()).isEqualTo(Level.UNKNOWN);
        assertThat(stranger.pieces()).isEmpty();
        assertThat(stranger.boards()).isEmpty();
    }

    @Test
    void thePhotographAskedAboutIsNotItsOwnEvidence() throws IOException {
        Recognition itself = asked(archive.features(kept));
        assertThat(itself.pieces().get(0).photo()).isEqualTo(RenderedSet.digest(kept));
        Recognition others = asked(archive.features(kept), RenderedSet.digest(kept));
        assertThat(others.pieces()).extracting(Recognition.Candidate::photo).doesNotContain(RenderedSet.digest(kept));
        assertThat(others.level()).isNotEqualTo(Level.THIS_PIECE);
    }

    @Test
    void theSamePictureGetsTheSameAnswerTwice() throws IOException {
        RecognitionScene scene = twins.get(1);
        assertThat(FeatureFinder.of(RenderedSet.pixels(archive.picture(scene)))).isEqualTo(archive.features(scene));
        PhotoFeatures picture = turned(scene);
        assertThat(asked(picture)).isEqualTo(asked(picture));
    }

    @Test
    void whoeverAskedMayStopIt() {
        Progress stopped = new Progress() {
            @Override
            public void at(long done, long total, String what) {}

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThatThrownBy(() -> new Recogniser(archive, () -> {}).recognise(archive.features(kept), Set.of(), stopped))
                .isInstanceOf(Progress.Cancelled.class);
    }

    @Test
    void theFeaturesOfAPhotographTakeAtMost150Kilobytes() throws IOException {
        PhotoFeatures full = archive.features(kept);
        int places = full.bytes().length + Codes.bytes(Codes.kept(full)).length;
        assertThat(full.count).as("as many as there may be").isEqualTo(PhotoFeatures.MOST);
        assertThat(places).isLessThanOrEqualTo(150_000);
    }
}
