package tenterbook.exchange.bag;

import gov.loc.repository.bagit.domain.Bag;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.nio.file.Path;
import java.util.Optional;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Message;

/**
 * What the BagIt library of the format's own authors says about a bag's completeness. It is asked after {@link BagCheck}
 * has found nothing, and not for checksums, which it would read anew for every manifest and cannot be stopped in.
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
