package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/**
 * What can be said of an encrypted backup without its passphrase: that every file which a generation needs is there as it was written.
 * Not that the files open, or what is in them.
 */
public final class EncryptedCheck {
    private EncryptedCheck() {}

    /**
     * @param files that the generation needs
     * @param findings what is wrong with them; empty where nothing is
     */
    public record Result(int files, List<Finding> findings) {}

    /** Reads every file; changes nothing. */
    public static Result run(EncryptedFolder.Generation generation, Progress progress) throws IOException {
        EncryptedFolder folder = generation.folder();
        GenerationList list = GenerationList.read(generation.list()).orElse(null);
        if (list == null) {
            return new Result(
                    0, List.of(new Finding(generation.list().toString(), Message.of("backup.encrypted.list-damaged"))));
        }
        List<Finding> findings = new ArrayList<>();
        Map<String, String> newest = folder.sums();
        Pace pace = new Pace(progress, 0);
        for (String path : list.sums().keySet()) {
            Path file = folder.root().resolve(path);
            pace.begin(Message.of("bag.checking", "file", path));
            if (!Files.isRegularFile(file)) {
                findings.add(new Finding(path, Message.of("backup.encrypted.missing")).meaning(Consequence.FILES));
            } else if (!newest.get(path)
                    .equals(Sums.of(file, List.of("sha256"), pace).hex().get("sha256"))) {
                findings.add(new Finding(path, Message.of("backup.encrypted.changed")).meaning(Consequence.FILES));
            }
        }
        return new Result(list.sums().size(), findings);
    }
}
