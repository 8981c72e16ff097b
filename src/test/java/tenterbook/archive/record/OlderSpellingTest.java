package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.ledger.revision.RecordCodec;

/** Versions are compared by what they mean: an older program wrote a quantity that nobody entered as an empty one. */
class OlderSpellingTest {
    @Test
    void nothingEnteredIsNoDifferenceHoweverItIsSpelled() {
        ObjectNode older = RecordCodec.parsed("{\"id\":\"B06\",\"wood\":\"pear\","
                + "\"length\":{\"entered\":\"\",\"basis\":\"unknown\",\"about\":false},"
                + "\"usualLayers\":{\"entered\":\"\",\"basis\":\"unknown\"},\"states\":[{\"name\":\"I\"}]}");
        ObjectNode newer = RecordCodec.parsed("{\"id\":\"B06\",\"wood\":\"cherry\",\"states\":[{\"name\":\"I\"}]}");
        List<Difference> differences = Difference.between(BoardPairRecord.BOARD_PAIR, older, newer);
        assertThat(differences).extracting(Difference::name).containsExactly("wood");
    }
}
