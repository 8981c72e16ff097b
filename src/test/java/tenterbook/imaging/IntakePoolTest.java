package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.IntakePool.Outcome;
import tenterbook.ledger.file.Progress;

class IntakePoolTest {
    @TempDir
    Path folder;

    private Originals originals;
    private PhotoIntake intake;

    @BeforeEach
    void open() throws IOException {
        originals = new Originals(folder.resolve("photos"));
        intake = new PhotoIntake(
                originals,
                new Previews(folder.resolve("previews"), originals),
                new ClothTable(folder.resolve("photos"), null));
    }

    @Test
    void outcomesComeInTheOrderTheyWereGivenAndOneRefusalHoldsUpNoOther() throws IOException {
        List<Incoming> incoming = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            byte[] jpeg = Corners.jpeg(900 - 90 * i, 40);
            incoming.add(new Incoming(i + ".jpg", () -> new ByteArrayInputStream(jpeg)));
        }
        incoming.add(4, new Incoming("words.jpg", () -> stream("not a picture")));
        incoming.add(6, Incoming.file(folder.resolve("gone.jpg")));
        Path file = Files.write(folder.resolve("here.jpg"), Corners.jpeg(64, 64));
        incoming.add(Incoming.file(file));

        Watched watched = new Watched();
        List<Outcome> outcomes = new IntakePool(intake, 3).take(incoming, watched);

        assertThat(outcomes)
                .extracting(Outcome::name)
                .containsExactly(incoming.stream().map(Incoming::name).toArray(String[]::new));
        assertThat(outcomes.get(4))
                .isInstanceOfSatisfying(
                        Outcome.Refused.class,
                        refused -> assertThat(refused.sentence())
                                .contains("a file of another kind")
                                .contains("Nothing in the archive has changed"));
        assertThat(outcomes.get(6))
                .isInstanceOfSatisfying(
                        Outcome.Refused.class,
                        refused -> assertThat(refused.sentence()).contains("could not be read"));
        assertThat(outcomes.get(0))
                .isInstanceOfSatisfying(
                        Outcome.Taken.class,
                        taken -> assertThat(taken.photo().width()).isEqualTo(900));
        assertThat(outcomes.get(11))
                .isInstanceOfSatisfying(
                        Outcome.Taken.class,
                        taken -> assertThat(originals.find(taken.photo().digest()))
                                .isPresent());
        assertThat(outcomes).filteredOn(Outcome.Taken.class::isInstance).hasSize(10);
        assertThat(watched.done).isSorted().hasSize(12).endsWith(12L);
    }

    @Test
    void everyPhotographAfterARequestToStopIsLeftAloneAndEveryStreamIsClosed() throws IOException {
        byte[] jpeg = Corners.jpeg(64, 64);
        AtomicInteger open = new AtomicInteger();
        List<Incoming> incoming = Collections.nCopies(20, new Incoming("a.jpg", () -> {
            open.incrementAndGet();
            return new FilterInputStream(new ByteArrayInputStream(jpeg)) {
                @Override
                public void close() {
                    open.decrementAndGet();
                }
            };
        }));
        Watched watched = new Watched();
        watched.stopAfter = 3;

        List<Outcome> outcomes = new IntakePool(intake, 1).take(incoming, watched);

        assertThat(outcomes).hasSize(20);
        assertThat(outcomes.subList(0, 3)).allMatch(Outcome.Taken.class::isInstance);
        assertThat(outcomes.subList(3, 20)).allMatch(Outcome.Stopped.class::isInstance);
        assertThat(open).hasValue(0);
        assertThat(originals.all()).hasSize(1);
    }

    @Test
    void aFaultOfTheProgramIsNotTakenForABadPhotograph() {
        Incoming faulty = new Incoming("a.jpg", () -> {
            throw new IllegalArgumentException("fault");
        });
        assertThatThrownBy(() -> new IntakePool(intake).take(List.of(faulty), Progress.UNWATCHED))
                .isInstanceOf(IllegalStateException.class)
                .hasRootCauseMessage("fault");
    }

    @Test
    void noPhotographsGiveNoOutcomes() {
        assertThat(new IntakePool(intake).take(List.of(), Progress.UNWATCHED)).isEmpty();
    }

    private static InputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static final class Watched implements Progress {
        private final List<Long> done = Collections.synchronizedList(new ArrayList<>());
        private volatile long stopAfter = Long.MAX_VALUE;
        private volatile boolean stopped;

        @Override
        public void at(long count, long total, String what) {
            done.add(count);
            stopped |= count >= stopAfter;
        }

        @Override
        public boolean cancelled() {
            return stopped;
        }
    }
}
