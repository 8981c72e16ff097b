package tenterbook.web.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.web.photo.FadingPages.FadingRow;

class ChangeAnswerTest {
    private static FadingRow row(String part, boolean changed, boolean notApart) {
        return new FadingRow(part, null, null, "", "", "", "", "", changed, notApart, "");
    }

    @Test
    void onlyPartsWithinTheLimitAreCalledNotToBeToldApart() {
        assertThat(ChangeAnswer.of(List.of(row("ground", false, true), row("resist", false, false)), true))
                .isEqualTo(
                        "Not to be told apart: ground. Two calibrated photographs of an unchanged cloth differ as much."
                                + " No change can be seen in: resist.");
        assertThat(ChangeAnswer.of(List.of(row("ground", true, false)), true))
                .isEqualTo("Yes, it has changed: ground.");
        assertThat(ChangeAnswer.of(List.of(row("ground", false, false)), false))
                .isEqualTo("No change can be seen in: ground.");
    }
}
