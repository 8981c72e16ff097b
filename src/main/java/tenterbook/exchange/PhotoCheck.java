package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * The photographs that the ledger names against the files that are there.
 *
 * @param damage a named photograph is missing or is not what its name says
 * @param orphans files that no record names; they do no harm and are told so that nothing is there unseen
 */
record PhotoCheck(List<Finding> damage, List<Finding> orphans) {
    /** Reads every original once. */
    static PhotoCheck of(Archive archive, Progress progress) {
        PhotoCheck check = new PhotoCheck(new ArrayList<>(), new ArrayList<>());
        // Withdrawn ones too: an older revision can be brought back, and its photograph with it.
        try {
            Set<String> named = new HashSet<>(archive.ledger().everGiven(Kinds.PHOTO));
            check.files(PhotoFiles.in(archive.folder().photos()), named, progress);
        } catch (JdbiException e) {
            check.damage.add(
                    new Finding("ledger.db", Message.of("exchange.photo.names-not-read", "why", Explained.of(e))));
        } catch (IOException e) {
            check.damage.add(new Finding("photos", Message.of("exchange.photo.not-listed", "why", e.toString())));
        }
        return check;
    }

    private void files(PhotoFiles files, Set<String> named, Progress progress) {
        Pace pace = new Pace(progress, files.bytes());
        Set<String> missing = new HashSet<>(named);
        files.originals().forEach((digest, copies) -> {
            missing.remove(digest.hex());
            boolean known = named.contains(digest.hex());
            for (PhotoFiles.Photograph photo : copies) {
                pace.begin(Message.of("exchange.photo.checking", "photograph", digest.brief()));
                compare(photo, digest.hex(), known ? damage : orphans, pace);
            }
            if (!known) {
                orphans.add(orphan(copies.get(0).path(), named.isEmpty()));
            }
            copies.stream()
                    .skip(1)
                    .forEach(second ->
                            orphans.add(second(second.path(), copies.get(0).path())));
        });
        missing.stream().sorted().forEach(hex -> damage.add(missing(hex)));
        for (Path strange : files.strange()) {
            orphans.add(new Finding("photos/" + strange.getFileName(), Message.of("exchange.photo.strange")));
        }
    }

    private static void compare(PhotoFiles.Photograph photo, String expected, List<Finding> into, Pace pace) {
        try {
            String found = Sums.of(photo.file(), List.of("sha256"), pace).hex().get("sha256");
            if (!found.equals(expected)) {
                into.add(changed(photo.path(), found));
            }
        } catch (IOException e) {
            into.add(new Finding(
                    "photos/" + photo.path(), Message.of("exchange.photo.not-to-end", "why", e.toString())));
        }
    }

    static Finding missing(String hex) {
        if (!hex.matches("[0-9a-f]{64}")) {
            return new Finding("photo " + hex, Message.of("exchange.photo.no-digest"));
        }
        return new Finding(
                "photo " + hex, Message.of("exchange.photo.missing", "start", hex.substring(0, 2), "digest", hex));
    }

    static Finding changed(String path, String found) {
        return new Finding("photos/" + path, Message.of("exchange.photo.changed", "found", found));
    }

    /** @param alone whether the ledger names no photograph at all, so that it may not be the one of these photographs */
    private static Finding orphan(String path, boolean alone) {
        return new Finding(
                "photos/" + path,
                alone ? Message.of("exchange.photo.orphan-alone") : Message.of("exchange.photo.orphan"));
    }

    private static Finding second(String path, String first) {
        return new Finding("photos/" + path, Message.of("exchange.photo.second", "first", first));
    }
}
