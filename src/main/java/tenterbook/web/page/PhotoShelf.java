package tenterbook.web.page;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.photo.Photo;
import tenterbook.web.Site;
import tenterbook.web.arrival.Arrivals;

/** Takes photographs in: the file first, safely on the disk, then the record that names it. */
public final class PhotoShelf {
    private final Site site;

    public PhotoShelf(Site site) {
        this.site = site;
    }

    /**
     * @return the record of the photograph; the one already there if it was added before
     * @throws tenterbook.photo.PhotoRefused with a sentence, where it is no photograph or too large
     */
    public Photo take(InputStream bytes, String name) throws IOException {
        Photo taken = site.intake().take(bytes, name);
        Optional<Photo> known = find(taken.digest());
        if (known.isPresent()) {
            return known.get();
        }
        return site.archive().ledger().write(site.author(), act -> Arrivals.name(site.archive(), act, taken));
    }

    public Optional<Photo> find(Digest digest) {
        return site.archive().ledger().find(Kinds.PHOTO, digest.hex()).map(Saved::record);
    }

    /** Pieces that show a photograph already, for the message that it was added twice. */
    public java.util.List<String> shownBy(Digest digest) {
        return site.archive().ledger().namedBy(Kinds.PHOTO.key(digest.hex())).stream()
                .map(key -> key.id())
                .toList();
    }
}
