package tenterbook.archive.arrival;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** Adds photographs: first the file, synced, then the record that refers to it. */
public final class PhotoRegistration {
    private final Archive archive;
    private final PhotoIntake intake;

    public PhotoRegistration(Archive archive, PhotoIntake intake) {
        this.archive = archive;
        this.intake = intake;
    }

    /**
     * @return the record of the photograph; the one already there if it was added before
     * @throws tenterbook.imaging.file.PhotoRefused with a sentence, where it is no photograph or too large
     */
    public Photo take(InputStream bytes, String name) throws IOException {
        Photo taken = intake.take(bytes, name);
        Optional<Photo> known = find(taken.digest());
        if (known.isPresent()) {
            return again(taken.digest()).orElse(known.get());
        }
        return archive.ledger().write(archive.author(), act -> Arrivals.name(archive, act, taken));
    }

    /**
     * Looks once more at a photograph that could not be shown, and writes what it sees.
     *
     * @return its new record; empty if it is shown already, is not recorded or still cannot be shown
     */
    public Optional<Photo> again(Digest digest) throws IOException {
        Optional<Saved<Photo>> known = archive.ledger()
                .find(Kinds.PHOTO, digest.hex())
                .filter(each -> !each.record().viewable());
        Optional<Photo> seen = known.isPresent() ? intake.again(known.get().record()) : Optional.empty();
        return seen.map(photo -> archive.ledger()
                .write(
                        archive.author(),
                        act -> act.save(
                                        Kinds.PHOTO,
                                        photo,
                                        known.get().version(),
                                        Message.of("photo.seen-again").inEnglish())
                                .record()));
    }

    /** The same for every photograph that could not be shown; a damaged one does not stop the others. */
    public AgainReport again() {
        int shown = 0;
        List<Message> findings = new ArrayList<>();
        for (Saved<Photo> each : archive.ledger().all(Kinds.PHOTO)) {
            if (!each.record().viewable()) {
                Message not = Message.of(
                        "photo.still-not-shown",
                        "name",
                        each.record().originalName(),
                        "digest",
                        each.record().digest().brief());
                try {
                    boolean seen = again(each.record().digest()).isPresent();
                    shown += seen ? 1 : 0;
                    if (!seen) {
                        findings.add(not);
                    }
                } catch (IOException e) {
                    findings.add(not);
                }
            }
        }
        return new AgainReport(shown, findings);
    }

    /**
     * What a second look found.
     *
     * @param shown how many can be shown now
     * @param findings a sentence for each that still cannot
     */
    public record AgainReport(int shown, List<Message> findings) {
        public AgainReport {
            findings = List.copyOf(findings);
        }
    }

    public Optional<Photo> find(Digest digest) {
        return archive.ledger().find(Kinds.PHOTO, digest.hex()).map(Saved::record);
    }

    /** Pieces that show a photograph already, for the message that it was added twice. */
    public List<String> shownBy(Digest digest) {
        return archive.ledger().referencedBy(Kinds.PHOTO.key(digest.hex())).stream()
                .map(key -> key.id())
                .toList();
    }
}
