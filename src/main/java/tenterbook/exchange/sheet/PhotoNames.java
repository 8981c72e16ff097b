package tenterbook.exchange.sheet;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;

/** The photographs of an archive by the names that their files had when they came in, in any case of letters; also by digest. */
final class PhotoNames {
    private final Map<Digest, String> names = new HashMap<>();
    private final Map<String, List<Digest>> byName = new HashMap<>();

    private PhotoNames() {}

    static PhotoNames of(Archive archive) {
        PhotoNames all = new PhotoNames();
        for (Saved<Photo> photo : archive.ledger().all(Kinds.PHOTO)) {
            Digest digest = photo.record().digest();
            String name = photo.record().originalName();
            all.names.put(digest, name);
            for (String each : List.of(name, digest.hex())) {
                all.byName.merge(
                        plain(each),
                        List.of(digest),
                        (one, other) ->
                                Stream.of(one, other).flatMap(List::stream).toList());
            }
        }
        return all;
    }

    /** All photographs of this name, with folders before it or not; more than one where files of one name differ. */
    List<Digest> called(String name) {
        return plain(name).isEmpty() ? List.of() : byName.getOrDefault(plain(name), List.of());
    }

    /** A name by which the photograph alone is found: that of its file, or its digest. */
    String nameOf(Digest photo) {
        String name = names.getOrDefault(photo, "");
        return called(name).size() == 1 ? name : photo.hex();
    }

    private static String plain(String name) {
        String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        return Normalizer.normalize(file.strip(), Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
    }
}
