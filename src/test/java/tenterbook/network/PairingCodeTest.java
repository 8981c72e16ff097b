package tenterbook.network;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.network.PairingCode.Outcome.OVER;
import static tenterbook.network.PairingCode.Outcome.PAIRED;
import static tenterbook.network.PairingCode.Outcome.TOO_SOON;
import static tenterbook.network.PairingCode.Outcome.WRONG;

import java.time.Instant;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PairingCodeTest {
    private static final Instant NOW = Instant.parse("2024-09-30T16:20:00Z");

    private final PairingCode code = PairingCode.begin(Rights.RECORD, NOW);

    private String other() {
        return code.digits().equals("00000000") ? "00000001" : "00000000";
    }

    @Test
    void eightDigitsPairOnceHoweverTheyAreGrouped() {
        assertThat(code.digits()).matches("\\d{8}");
        String grouped = code.digits().substring(0, 4) + " -" + code.digits().substring(4);
        assertThat(code.attempt(grouped, "192.168.1.20", NOW)).isEqualTo(PAIRED);
        assertThat(code.attempt(code.digits(), "192.168.1.20", NOW)).isEqualTo(OVER);
        assertThat(IntStream.range(0, 20)
                        .mapToObj(i -> PairingCode.begin(Rights.LOOK, NOW).digits())
                        .distinct())
                .as("codes differ")
                .hasSizeGreaterThan(18);
    }

    @Test
    void aCodeHoldsForFiveMinutes() {
        assertThat(code.over(NOW.plusSeconds(299))).isFalse();
        assertThat(code.over(NOW.plusSeconds(300))).isTrue();
        assertThat(code.attempt(code.digits(), "192.168.1.20", NOW.plusSeconds(300)))
                .isEqualTo(OVER);
    }

    @Test
    void fiveWrongTriesFromAnyAddressesEndIt() {
        for (int i = 1; i < 5; i++) {
            assertThat(code.attempt(other(), "192.168.1." + i, NOW)).isEqualTo(WRONG);
        }
        assertThat(code.attempt(other(), "192.168.1.5", NOW)).isEqualTo(OVER);
        assertThat(code.attempt(code.digits(), "192.168.1.6", NOW)).isEqualTo(OVER);
        assertThat(code.used()).isFalse();
    }

    @Test
    void eachWrongTryMakesItsAddressWaitTwiceAsLongAndNoOther() {
        assertThat(code.attempt(other(), "192.168.1.20", NOW)).isEqualTo(WRONG);
        assertThat(code.attempt(code.digits(), "192.168.1.20", NOW.plusMillis(900)))
                .isEqualTo(TOO_SOON);
        assertThat(code.attempt(other(), "192.168.1.20", NOW.plusSeconds(1))).isEqualTo(WRONG);
        assertThat(code.attempt(code.digits(), "192.168.1.20", NOW.plusMillis(2900)))
                .isEqualTo(TOO_SOON);
        assertThat(code.attempt(code.digits(), "192.168.1.21", NOW.plusMillis(2900)))
                .isEqualTo(PAIRED);
    }
}
