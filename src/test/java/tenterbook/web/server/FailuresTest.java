package tenterbook.web.server;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FailuresTest {
    @Test
    void onlyWhoSentAFormIsToldToGoBackToIt() {
        assertThat(Failures.mistake(new IllegalStateException(), true))
                .contains("IllegalStateException", "safe; go back to the form, which has kept what you typed.");
        assertThat(Failures.mistake(new IllegalStateException(), false))
                .contains("IllegalStateException", "What was saved before is safe. ")
                .doesNotContain("form");
    }
}
