package tenterbook.search.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.apache.lucene.util.BytesRef;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.piece.Category;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Status;

class CardBytesTest {
    private static final PieceCard FULL = new PieceCard(
            "V24-001",
            "V25-003",
            "Maré baixa",
            "板締め絞り",
            Status.SOLD,
            Category.SCARF,
            "180 cm × 45 cm",
            "6–8",
            2024,
            List.of(new PieceCard.Board("B02", "B02 Heron weir", "II")),
            List.of("SH silk habotai"),
            List.of("leak", "bleed"),
            Digest.of(new byte[] {1}),
            "𝄞 front",
            List.of(
                    new PieceColour(new Lab(40.125, -4, -23), 0.4, "deep blue", null),
                    new PieceColour(new Lab(88, 0, 8), null, "", ColourRole.GROUND)));

    @Test
    void aCardComesBackAsItWas() {
        PieceCard bare =
                new PieceCard("1", null, null, null, null, null, null, null, null, null, null, null, null, null, null);
        for (PieceCard card : List.of(FULL, bare)) {
            assertThat(CardBytes.read(new BytesRef(CardBytes.written(card)))).isEqualTo(card);
        }
    }

    @Test
    void aCardCutShortIsRefusedWithWhatToDo() {
        byte[] bytes = CardBytes.written(FULL);
        assertThatThrownBy(() -> CardBytes.read(new BytesRef(bytes, 0, 30))).hasMessageContaining("reindex");
    }
}
