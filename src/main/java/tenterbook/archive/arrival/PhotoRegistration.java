package tenterbook.archive.arrival;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;

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
            return known.get();
        }
        return archive.ledger().write(archive.author(), act -> Arrivals.name(archive, act, taken));
    }

    public Optional<Photo> find(Digest digest) {
        return archive.ledger().find(Kinds.PHOTO, digest.hex()).map(Saved::record);
    }

    /** Pieces that show a photograph already, for the message that it was added twice. */
    public java.util.List<String> shownBy(Digest digest) {
        return archive.ledger().referencedBy(Kinds.PHOTO.key(digest.hex())).stream()
                .map(key -> key.id())
                .toList();
    }
}
