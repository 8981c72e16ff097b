package tenterbook.exchange;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.ArchiveFolder;
import tenterbook.ledger.Finding;
import tenterbook.ledger.RecordCodec;
import tenterbook.ledger.Revision;

/** A folder of an archive whose files are named by their SHA-256, and what is said of it where something is wrong. */
enum KeptFolder {
    PHOTOS(
            "photos",
            "photograph",
            ArchiveFolder::photos,
            KeptFolder::photographs,
            "its original is missing; expected photos/%s/%s with its extension. Look for it in an older bag.",
            "an orphan: no record names it. This happens when the program was stopped between receiving a photograph and saving it; add the photograph again to use it, or delete the file."),
    PAPERS(
            "papers",
            "issued paper",
            ArchiveFolder::papers,
            KeptFolder::papers,
            "its PDF is missing; expected papers/%s/%s.pdf. Look for it in an older bag; its words are in the ledger.",
            "an orphan: no record names it. This happens when the program was stopped between laying out a paper and saving it, so that it was not issued; delete the file.");

    private final String name;
    private final String one;
    private final Function<ArchiveFolder, Path> place;
    private final Function<Archive, Map<String, String>> named;
    private final String missing;
    private final String orphan;

    KeptFolder(
            String name,
            String one,
            Function<ArchiveFolder, Path> place,
            Function<Archive, Map<String, String>> named,
            String missing,
            String orphan) {
        this.name = name;
        this.one = one;
        this.place = place;
        this.named = named;
        this.missing = missing;
        this.orphan = orphan;
    }

    /** One file, in words. */
    String one() {
        return one;
    }

    Path in(ArchiveFolder archive) {
        return place.apply(archive);
    }

    /** The path of a file in the archive and in a bag, as in {@code photos/ab/abcd….jpg}. */
    String path(String within) {
        return name + "/" + within;
    }

    /** The records that name a file, each by the digest; withdrawn and older ones too, since they can be brought back. */
    Map<String, String> named(Archive archive) {
        return named.apply(archive);
    }

    /** @param record that names it */
    Finding missing(String record, String hex) {
        if (!hex.matches("[0-9a-f]{64}")) {
            return new Finding(record, "is named in the ledger by something that is no SHA-256.");
        }
        return new Finding(record, missing.formatted(hex.substring(0, 2), hex));
    }

    Finding changed(String within, String found) {
        return new Finding(
                path(within),
                "is not the file that was taken in: its SHA-256 is %s, not its name. Put back the one from an older bag."
                        .formatted(found));
    }

    /** @param alone whether the ledger names no such file at all, so that it may not be the one of these files */
    Finding orphan(String within, boolean alone) {
        return new Finding(
                path(within),
                alone
                        ? "no record names it, and the ledger names no %s at all. Keep the file: if there were records once, another ledger was put in this one's place. Look for the right ledger.db, or restore the newest bag into another folder."
                                .formatted(one)
                        : orphan);
    }

    Finding second(String within, String first) {
        return new Finding(path(within), "an orphan: a second file of the same %s as %s.".formatted(one, path(first)));
    }

    Finding strange(Path file) {
        return new Finding(
                path(file.getFileName().toString()),
                "is no original under its own SHA-256, as every file there should be. It may have been put there by hand; take it elsewhere.");
    }

    /** Whether a bag's payload, without {@code data/}, is a file of such a folder. */
    static boolean holds(String inside) {
        return Stream.of(values())
                .anyMatch(kept -> inside.startsWith(kept.path(""))
                        && KeptFiles.isKept(inside.substring(kept.path("").length())));
    }

    private static Map<String, String> photographs(Archive archive) {
        Map<String, String> named = new HashMap<>();
        archive.ledger()
                .everGiven(Kinds.PHOTO)
                .forEach(hex -> named.put(hex, Kinds.PHOTO.key(hex).toString()));
        return named;
    }

    private static Map<String, String> papers(Archive archive) {
        Map<String, String> named = new HashMap<>();
        for (String id : archive.ledger().everGiven(Kinds.ISSUED_PAPER)) {
            for (Revision revision : archive.ledger().history(Kinds.ISSUED_PAPER.key(id))) {
                pdf(revision).ifPresent(hex -> named.put(hex, revision.key().toString()));
            }
        }
        return named;
    }

    /** From the stored text, so that a paper which a newer program wrote names its file too; empty where it is no JSON object. */
    private static Optional<String> pdf(Revision revision) {
        try {
            return Optional.of(RecordCodec.parsed(revision.json())
                            .at("/pdf/digest")
                            .asText())
                    .filter(hex -> !hex.isEmpty());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
