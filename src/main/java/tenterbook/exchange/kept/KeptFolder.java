package tenterbook.exchange.kept;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/** A folder of an archive whose files are named by their SHA-256, with its messages. */
public enum KeptFolder {
    PHOTOS("photos", ArchiveFolder::photos, KeptFolder::photographs),
    PAPERS("papers", ArchiveFolder::papers, KeptFolder::papers);

    private final String name;
    private final Function<ArchiveFolder, Path> place;
    private final Function<Archive, Map<String, String>> named;

    KeptFolder(String name, Function<ArchiveFolder, Path> place, Function<Archive, Map<String, String>> named) {
        this.name = name;
        this.place = place;
        this.named = named;
    }

    /** A sentence about such a file; as for {@link Message#of}. */
    public Message message(String key, Object... namesAndValues) {
        return Message.of("exchange." + name + "." + key, namesAndValues);
    }

    public Path in(ArchiveFolder archive) {
        return place.apply(archive);
    }

    /** The path of a file in the archive and in a bag, as in {@code photos/ab/abcd….jpg}. */
    public String path(String within) {
        return name + "/" + within;
    }

    /** The records that name a file, each by the digest; withdrawn and older ones too, since they can be brought back. */
    public Map<String, String> named(Archive archive) {
        return named.apply(archive);
    }

    /** @param record that names it */
    public Finding missing(String record, String hex) {
        if (!hex.matches("[0-9a-f]{64}")) {
            return new Finding(record, Message.of("exchange.file.no-digest")).meaning(Consequence.FILES);
        }
        return new Finding(record, message("missing", "start", hex.substring(0, 2), "digest", hex))
                .meaning(Consequence.FILES);
    }

    public Finding changed(String within, String found) {
        return new Finding(path(within), Message.of("exchange.file.changed", "found", found))
                .meaning(Consequence.FILES);
    }

    /**
     * @param alone whether the ledger names no such file at all, so that it may not be the one of these files
     * @param doubted whether something is wrong with the ledger, so that what is missing of it may name the file
     */
    public Finding orphan(String within, boolean alone, boolean doubted) {
        String which = alone ? "orphan-alone" : doubted ? "orphan-doubted" : "orphan";
        return new Finding(path(within), message(which)).meaning(Consequence.UNNAMED);
    }

    public Finding second(String within, String first) {
        return new Finding(path(within), message("second", "first", path(first))).meaning(Consequence.UNNAMED);
    }

    public Finding strange(Path file) {
        return new Finding(path(file.getFileName().toString()), Message.of("exchange.file.strange"))
                .meaning(Consequence.UNNAMED);
    }

    /** Whether a bag's payload, without {@code data/}, is a file of such a folder. */
    public static boolean holds(String inside) {
        return Stream.of(values())
                .anyMatch(kept -> inside.startsWith(kept.path(""))
                        && KeptFiles.isKept(inside.substring(kept.path("").length())));
    }

    private static Map<String, String> photographs(Archive archive) {
        Map<String, String> named = new HashMap<>();
        archive.ledger()
                .allIdsEverUsed(Kinds.PHOTO)
                .forEach(hex -> named.put(hex, Kinds.PHOTO.key(hex).toString()));
        return named;
    }

    private static Map<String, String> papers(Archive archive) {
        Map<String, String> named = new HashMap<>();
        for (String id : archive.ledger().allIdsEverUsed(Kinds.ISSUED_PAPER)) {
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
