package tenterbook.exchange.bag;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;

/**
 * Two sample bags of the Library of Congress (bagit-conformance-suite, public domain), which are kept beside this project
 * and not in it.
 */
class SampleBagsTest {
    private static Path sample(String name) {
        String reference = System.getProperty("reference.folder", "");
        assumeTrue(!reference.isEmpty(), "Skipped: -Dreference.folder names no folder of sample bags");
        Path folder = Path.of(reference, "bagit", name);
        assumeTrue(Files.isDirectory(folder), "Skipped: the sample bags are not at " + folder);
        return folder;
    }

    @Test
    void theValidSampleIsValid() throws Exception {
        Path bag = sample("valid-basicBag");

        assertThat(BagCheck.run(bag, Progress.UNWATCHED).findings()).isEmpty();
        assertThat(SecondOpinion.ask(bag)).isEmpty();
    }

    @Test
    void theCorruptSampleIsToldFileByFile() throws Exception {
        assertThat(BagCheck.run(sample("invalid-corrupt-data-file"), Progress.UNWATCHED)
                        .findings())
                .extracting(Finding::toString)
                .satisfiesExactly(
                        oxum -> assertThat(oxum).contains("Payload-Oxum 58.2; found 66.2"),
                        file -> assertThat(file)
                                .startsWith("data/bare-filename: ")
                                .contains("manifest-md5.txt expects 751e32179ec8acd71081654527f2e771"));
    }
}
