package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.RestoredSample;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.recipe.dip.Group;

/**
 * How far the answers are off for a piece that was left out: over the sample archive and over invented vats, fixed seeds. Each
 * bound is an aim; the figures reached are printed.
 *
 * <p>{@code -Dvats=} sets how many vats of each law are drawn. The ordinary run draws few and holds its aims over the four laws
 * together. The full run, {@code -Dvats=25}, holds them for each law by itself; on 2026-11-29 it measured, in 1336 answers: nine in
 * ten within a factor of 1.54 (1.40 to 1.66 by law), 91.7 % held by their interval (90.4 to 94.7), median width 7.9 dips, 288 refused;
 * for further dips, in 611 answers, 1.47, 91.7 % and 7.5 dips.
 *
 * <p>A curve of K/S with an error constant in K/S, which stood here before, was off by 3.3 in one of ten answers over invented
 * vats and 3.8 in the sample, with 35.6 and 10.8 dips as median width, and refused three in five.
 */
class DipAccuracyTest {
    private static final int VATS = Integer.getInteger("vats", 7);
    /** Of one law fewer answers than those of so many vats scatter by more than the aims leave. */
    private static final int FULL = 25;

    @TempDir
    static Path folder;

    private static List<Dyed> sample;

    @BeforeAll
    static void readSample() throws Exception {
        RestoredSample.copyTo(folder.resolve("archive"));
        try (Archive archive = Archive.open(folder.resolve("archive"), Clock.systemUTC())) {
            sample = DipEvidence.of(archive);
        }
    }

    private static List<Dyed> silk() {
        Group silk = new Group("SH", "Mare");
        return sample.stream().filter(each -> each.group().equals(silk)).toList();
    }

    @Test
    void aPieceLeftOutOfTheSampleIsFoundWithinAFactor() {
        LeftOut left = new LeftOut();
        left.askEach(silk());
        System.out.println("sample: " + left);
        assertThat(left.answered()).isEqualTo(7);
        assertThat(left.factorOfNineInTen()).isLessThan(1.7);
        // Six of seven, or all of them.
        assertThat(left.percentHeld()).isGreaterThan(85);
        assertThat(left.medianWidth()).isLessThan(10.8 / 2);
    }

    @Test
    void aPieceLeftOutOfInventedVatsIsFoundWithinAFactorAndHeldByItsInterval() {
        LeftOut all = new LeftOut();
        for (SimulatedVat.Law law : SimulatedVat.Law.values()) {
            LeftOut left = new LeftOut();
            for (int seed = 0; seed < VATS; seed++) {
                List<Dyed> pieces =
                        SimulatedVat.draw(law, 7919L * law.ordinal() + seed).pieces();
                left.askEach(pieces);
            }
            all.add(left);
            System.out.println(law + ": " + left);
            if (VATS >= FULL) {
                assertThat(left.factorOfNineInTen()).as("%s", law).isLessThan(1.75);
                assertThat(left.percentHeld()).as("%s", law).isBetween(85.0, 95.0);
            }
        }
        System.out.println("all: " + all);
        assertThat(all.factorOfNineInTen()).isLessThan(1.7);
        assertThat(all.percentHeld()).isBetween(85.0, 95.0);
        assertThat(all.medianWidth()).isLessThan(35.6 / 2);
        assertThat(all.refused()).isLessThan(all.answered() / 4);
    }

    @Test
    void theAnswerForTheColourOfAMeasuredPieceAgreesWithIt() {
        for (Dyed piece : silk()) {
            agrees(silk(), piece);
            assertThat(DipQuestion.ask(silk(), piece.group(), piece.ground(), null)
                            .nearest()
                            .disagrees())
                    .as(piece.piece())
                    .isFalse();
        }
        int disagreements = 0;
        int asked = 0;
        for (SimulatedVat.Law law : SimulatedVat.Law.values()) {
            for (int seed = 0; seed < VATS / 3; seed++) {
                List<Dyed> pieces =
                        SimulatedVat.draw(law, 104_729L * law.ordinal() + seed).pieces();
                for (Dyed piece : pieces) {
                    disagreements += agrees(pieces, piece) ? 0 : 1;
                    asked++;
                }
            }
        }
        assertThat(100.0 * disagreements / asked).as("percent that disagree").isLessThan(5);
    }

    /** Inside its interval always; within 1.7, or the answer says that it is not. */
    private static boolean agrees(List<Dyed> pieces, Dyed piece) {
        DipQuestion question = DipQuestion.ask(pieces, piece.group(), piece.ground(), null);
        DipsNeeded needed = question.needed();
        if (needed == null) {
            return true;
        }
        double dips = piece.dips().middle();
        assertThat(needed.plausible().holds(dips)).as("%s in %s", piece, needed).isTrue();
        if (Double.isFinite(needed.best())) {
            assertThat(needed.plausible().holds(needed.best())).as("%s", needed).isTrue();
        }
        boolean near = needed.best() <= 1.7 * dips && dips <= 1.7 * needed.best();
        assertThat(near || question.nearest().disagrees())
                .as("%s in %s", piece, needed)
                .isTrue();
        return near;
    }

    @Test
    void furtherDipsOfAPieceAreFoundWithinAFactorAndHeldByTheirInterval() {
        LeftOut all = new LeftOut();
        for (SimulatedVat.Law law : SimulatedVat.Law.values()) {
            for (int seed = 0; seed < VATS / 2; seed++) {
                SimulatedVat vat = SimulatedVat.draw(law, 15_485_863L * law.ordinal() + seed);
                vat.further().forEach(piece -> all.askFurther(vat.pieces(), piece.now(), piece.then()));
            }
        }
        System.out.println("further: " + all);
        assertThat(all.factorOfNineInTen()).isLessThan(1.7);
        // Somewhat too wide: the whole spread is taken, though what a clamping's vat gave the piece so far is in its
        // reading.
        assertThat(all.percentHeld()).isBetween(85.0, 97.0);
    }

    @Test
    void otherClothsDoNotChangeAnAnswer() {
        List<Dyed> silk = silk();
        Dyed piece = silk.get(0);
        assertThat(sample.size()).isGreaterThan(silk.size());
        assertThat(DipQuestion.ask(new ArrayList<>(sample), piece.group(), piece.ground(), null)
                        .needed())
                .isEqualTo(DipQuestion.ask(silk, piece.group(), piece.ground(), null)
                        .needed());
    }
}
