package tenterbook.web.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class JobsTest {
    @Test
    void workThatExhaustsJavaItselfEndsAsFailedAndTheNextGoesOn() throws InterruptedException {
        try (Jobs jobs = new Jobs()) {
            Job failing = jobs.start("Filling the memory", progress -> {
                throw new OutOfMemoryError("Java heap space");
            });
            CountDownLatch reached = new CountDownLatch(1);
            jobs.start("Afterwards", progress -> {
                reached.countDown();
                return new Job.Outcome("Done.", List.of(), "");
            });
            assertThat(reached.await(20, TimeUnit.SECONDS)).isTrue();
            assertThat(failing.state()).isEqualTo(Job.State.FAILED);
            assertThat(failing.outcome().summary()).contains("Java heap space");
        }
    }
}
