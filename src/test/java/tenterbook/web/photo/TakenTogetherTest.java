package tenterbook.web.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.measure.Digest;

class TakenTogetherTest {
    private static Photo taken(String time) {
        String digest = Digest.of(time.getBytes(StandardCharsets.UTF_8)).hex();
        return Kinds.PHOTO.codec().fromText("{\"digest\": \"" + digest + "\", \"taken\": \"" + time + "\"}");
    }

    private static List<TakenTogether> among(String... times) {
        return TakenTogether.among(
                Stream.of(times).map(TakenTogetherTest::taken).toList());
    }

    @Test
    void photographsTenMinutesApartBelongTogetherAndLonesDoNot() {
        assertThat(among(
                        "2024-03-05T10:00:00",
                        "2024-03-05T10:09:59+01:00",
                        "2024-03-05T10:19:59",
                        "2024-03-05T10:30:00",
                        "2024-03-05T23:58:00",
                        "2024-03-06T00:01:00"))
                .containsExactly(new TakenTogether(0, 3), new TakenTogether(4, 2));
    }

    @Test
    void whatHasNoTimeIsInNoGroup() {
        assertThat(among("2024-03-05T10:00:00", "", "2024")).isEmpty();
        assertThat(among()).isEmpty();
    }
}
