package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.RestoredSample;
import tenterbook.facts.DipEvidence.Dyed;

/** How far the answers are off for a piece that was left out: over the sample archive, and over invented vats. Fixed seeds. */
class DipAccuracyTest {
    private static final int VATS = Integer.getInteger("vats", 150);

    private static List<Dyed> sample(Path folder) throws Exception {
        RestoredSample.copyTo(folder.resolve("archive"));
        try (Archive archive = Archive.open(folder.resolve("archive"), Clock.systemUTC())) {
            return DipEvidence.of(archive);
        }
    }

    @Test
    void sample_(@TempDir Path folder) throws Exception {
        List<Dyed> all = sample(folder);
        List<Dyed> silk =
                all.stream().filter(each -> each.group().cloth().equals("SH")).toList();
        LeftOut left = new LeftOut();
        left.askEach(silk);
        System.out.println("sample leave one out: " + left);
        for (Dyed each : silk) {
            System.out.println(each.dips().text() + " -> "
                    + DipQuestion.ask(all, each.group(), each.ground(), null)
                            .needed()
                            .sentence()
                            .inEnglish());
            List<Dyed> rest = new java.util.ArrayList<>(silk);
            rest.remove(each);
            var q = DipQuestion.ask(rest, each.group(), each.ground(), null);
            System.out.println("   left out: "
                    + (q.needed() == null
                            ? q.curve().refusal()
                            : q.needed().sentence().inEnglish() + " "
                                    + q.needed().best()));
        }
        assertThat(left.answered()).isEqualTo(7);
    }

    @Test
    void simulated() {
        LeftOut all = new LeftOut();
        LeftOut own = new LeftOut();
        for (SimulatedVat.Law law : SimulatedVat.Law.values()) {
            LeftOut left = new LeftOut();
            for (int seed = 0; seed < VATS; seed++) {
                List<Dyed> pieces =
                        SimulatedVat.draw(law, 7919L * law.ordinal() + seed).pieces();
                left.askEach(pieces);
                all.askEach(pieces);
                pieces.forEach(piece -> own.ask(pieces, piece));
            }
            System.out.println(law + ": " + left);
        }
        System.out.println("all: " + all);
        System.out.println("asked for its own pieces: " + own);
    }
}
