package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.RestoredSample;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;

class SampleTagsTest {
    @TempDir
    Path folder;

    /** The sample pieces name colours at length, as makers do; each must still have its tag where its cloth is known. */
    @Test
    void everySamplePieceHasATagWhereItsNamesAreKnown() throws Exception {
        Path place = folder.resolve("studio");
        RestoredSample.copyTo(place);
        List<String> heldBack = new ArrayList<>();
        try (Archive archive = Archive.open(place, Clock.systemUTC())) {
            for (var saved : archive.ledger().all(Kinds.PIECE)) {
                Piece piece = saved.record();
                for (Market market : List.of(Market.US, Market.EU, Market.UK, Market.NI)) {
                    PieceFacts facts = PieceReader.of(archive, piece);
                    assertThat(TagColours.of(facts)).as(piece.number().value()).isNotEmpty();
                    try {
                        LabelPaper.pdf(
                                List.of(facts),
                                PrintSettings.of(LabelKind.HANG_TAG, market).withPrice(),
                                OutputStream.nullOutputStream(),
                                Clock.systemUTC(),
                                Progress.UNWATCHED);
                    } catch (RuntimeException e) {
                        heldBack.add(piece.number() + " " + market + ": " + e.getMessage());
                    }
                }
            }
        }
        assertThat(heldBack).isEmpty();
    }
}
