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
            check.damage.add(new Finding(
                    "ledger.db", "which photographs it names cannot be read: %s.".formatted(e.getMessage())));
        } catch (IOException e) {
            check.damage.add(new Finding("photos", "cannot be listed: %s.".formatted(e)));
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
                pace.begin("checking photograph " + digest.brief());
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
            orphans.add(
                    new Finding(
                            "photos/" + strange.getFileName(),
                            "is no original under its own SHA-256, as every file there should be. It may have been put there by hand; take it elsewhere."));
        }
    }

    private static void compare(PhotoFiles.Photograph photo, String expected, List<Finding> into, Pace pace) {
        try {
            String found = Sums.of(photo.file(), List.of("sha256"), pace).hex().get("sha256");
            if (!found.equals(expected)) {
                into.add(changed(photo.path(), found));
            }
        } catch (IOException e) {
            into.add(new Finding("photos/" + photo.path(), "cannot be read to its end: %s.".formatted(e)));
        }
    }

    static Finding missing(String hex) {
        if (!hex.matches("[0-9a-f]{64}")) {
            return new Finding("photo " + hex, "is named in the ledger by something that is no SHA-256.");
        }
        return new Finding(
                "photo " + hex,
                "its original is missing; expected photos/%s/%s with its extension. Look for it in an older bag."
                        .formatted(hex.substring(0, 2), hex));
    }

    static Finding changed(String path, String found) {
        return new Finding(
                "photos/" + path,
                "is not the file that was taken in: its SHA-256 is %s, not its name. Put back the one from an older bag."
                        .formatted(found));
    }

    /** @param alone whether the ledger names no photograph at all, so that it may not be the one of these photographs */
    private static Finding orphan(String path, boolean alone) {
        return new Finding(
                "photos/" + path,
                alone
                        ? "no record names it, and the ledger names no photograph at all. Keep the file: if there were records once, another ledger was put in this one's place. Look for the right ledger.db, or restore the newest bag into another folder."
                        : "an orphan: no record names it. This happens when the program was stopped between receiving a photograph and saving it; add the photograph again to use it, or delete the file.");
    }

    private static Finding second(String path, String first) {
        return new Finding(
                "photos/" + path, "an orphan: a second file of the same photograph as photos/%s.".formatted(first));
    }
}
