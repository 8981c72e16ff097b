package tenterbook.exchange.bag;

import gov.loc.repository.bagit.domain.Bag;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.nio.file.Path;
import java.util.Optional;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Message;

/**
 * A check of a bag's completeness by the BagIt library of the format's authors, after {@link BagCheck} has found nothing. Not
 * of checksums, for which it reads every file once for each manifest and cannot be cancelled.
 */
public final class SecondOpinion {
    private SecondOpinion() {}

    /** Empty where the library agrees that the bag is complete. */
    public static Optional<Finding> ask(Path bag) throws InterruptedException {
        try (BagVerifier verifier = new BagVerifier()) {
            Bag read = new BagReader().read(bag);
            verifier.isComplete(read, false);
            if (BagVerifier.canQuickVerify(read)) {
                BagVerifier.quicklyVerify(read);
            }
            return Optional.empty();
        } catch (InterruptedException e) {
            throw e;
        } catch (Exception e) {
            return Optional.of(new Finding(
                    bag.toString(), Message.of("bag.second-opinion", "why", String.valueOf(e.getMessage()))));
        }
    }
}
