package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagWriter;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.KeptFiles;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.exchange.kept.SharedFiles;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.piece.Studio;
import tenterbook.words.Message;

/** Fills one bag with the state of an archive at one moment; the archive may change meanwhile. */
public final class BagFilling {
    private final Archive archive;
    private final Path place;
    private final Progress progress;
    private final List<Finding> findings;
    private final List<String> leftOut = new ArrayList<>();
    private final BagWriter bag;
    private final Map<KeptFolder, KeptFiles> kept = new EnumMap<>(KeptFolder.class);
    private final Map<KeptFolder, Map<String, String>> named = new EnumMap<>(KeptFolder.class);
    private final Map<KeptFolder, Long> copied = new EnumMap<>(KeptFolder.class);
    private final Pace pace;
    private final long last;
    private final LocalDate today;
    private final @Nullable SharedFiles shared;

    BagFilling(Archive archive, Path whole, Path place, LocalDate today, Progress progress, List<Finding> findings)
            throws IOException {
        this(archive, whole, place, today, progress, findings, null);
    }

    /** @param shared where photographs and papers go instead of into the bag; null for a bag that holds them */
    public BagFilling(
            Archive archive,
            Path whole,
            Path place,
            LocalDate today,
            Progress progress,
            List<Finding> findings,
            @Nullable SharedFiles shared)
            throws IOException {
        this.shared = shared;
        this.archive = archive;
        this.place = place;
        this.today = today;
        this.progress = progress;
        this.findings = findings;
        this.bag = new BagWriter(whole);
        progress.at(0, 0, Message.of("exchange.pack.copying-ledger"));
        this.last = archive.ledger().copyToKeep(bag.place("ledger.db"));
        long bytes = Files.size(bag.place("ledger.db"));
        for (KeptFolder folder : KeptFolder.values()) {
            // The ledger is read first: a file is on the disk before the ledger names it, so none can seem to be
            // missing.
            named.put(folder, folder.named(archive));
            kept.put(folder, KeptFiles.in(folder.in(archive.folder())));
            copied.put(folder, 0L);
            bytes += kept.get(folder).bytes();
        }
        this.pace = new Pace(progress, bytes);
    }

    /** @param notes as the bag has them */
    public Bag fill(DamageAdvice damage, List<Finding> notes) throws IOException {
        pace.begin(Message.of("exchange.pack.copying-ledger"));
        bag.written("ledger.db", pace);
        new LedgerText(archive, last, progress).write(bag, pace);
        for (KeptFolder folder : KeptFolder.values()) {
            copy(folder);
        }
        if (!findings.isEmpty() && damage == DamageAdvice.REFUSED) {
            throw new PackRefused(findings, Message.of("exchange.pack.mend"));
        }
        Digest hash = last == 0
                ? Revision.NONE
                : archive.ledger().after(last - 1, 1).get(0).hash();
        Contents contents = Contents.EVERYTHING;
        readMe(contents, hash);
        bag.finish(info(contents, hash));
        return new Bag(
                place,
                bag.files(),
                bag.bytes(),
                last,
                hash,
                copied.get(KeptFolder.PHOTOS),
                findings,
                leftOut,
                contents,
                notes);
    }

    private void copy(KeptFolder folder) throws IOException {
        Map<String, String> missing = new TreeMap<>(named.get(folder));
        for (Map.Entry<Digest, List<KeptFiles.KeptFile>> entry :
                kept.get(folder).files().entrySet()) {
            missing.remove(entry.getKey().hex());
            for (KeptFiles.KeptFile file : entry.getValue()) {
                pace.begin(folder.message("copying", "file", entry.getKey().brief()));
                copy(folder, file, entry.getKey().hex());
            }
        }
        missing.forEach((hex, record) -> findings.add(folder.missing(record, hex)));
        kept.get(folder)
                .strange()
                .forEach(file -> leftOut.add(folder.path(file.getFileName().toString())));
    }

    private void copy(KeptFolder folder, KeptFiles.KeptFile file, String hex) throws IOException {
        String path = folder.path(file.path());
        if (shared != null) {
            String found = shared.store(folder, file, hex, pace);
            if (found.equals(hex)) {
                copied.merge(folder, 1L, Long::sum);
            } else if (named.get(folder).containsKey(hex)) {
                findings.add(folder.changed(file.path(), found));
            } else {
                leftOut.add(path);
            }
            return;
        }
        String found = bag.copy(file.file(), path, pace).hex().get("sha256");
        if (!found.equals(hex) && !named.get(folder).containsKey(hex)) {
            bag.remove(path);
            leftOut.add(path);
            return;
        }
        copied.merge(folder, 1L, Long::sum);
        if (!found.equals(hex)) {
            findings.add(folder.changed(file.path(), found));
        }
    }

    private void readMe(Contents contents, Digest hash) throws IOException {
        String text = ReadMe.text(Map.of(
                "studio",
                        studio().isEmpty()
                                ? Message.of("exchange.pack.a-studio").inEnglish()
                                : studio(),
                "date", today.toString(),
                "privacy", contents.privacy().inEnglish(),
                "sequence", Long.toString(last),
                "hash", hash.hex(),
                "photos", copied.get(KeptFolder.PHOTOS).toString(),
                "papers", copied.get(KeptFolder.PAPERS).toString(),
                "damage", damageInWords()));
        Files.writeString(bag.place("READ-ME-FIRST.txt"), text);
        bag.written("READ-ME-FIRST.txt", pace);
    }

    private String damageInWords() {
        if (findings.isEmpty()) {
            return Message.of("exchange.pack.whole").inEnglish();
        }
        StringBuilder words =
                new StringBuilder(Message.of("exchange.pack.damaged").inEnglish()).append('\n');
        findings.forEach(finding -> words.append("  - ").append(finding).append('\n'));
        return words.toString();
    }

    private List<Map.Entry<String, String>> info(Contents contents, Digest hash) {
        List<Map.Entry<String, String>> info = new ArrayList<>();
        if (!studio().isEmpty()) {
            info.add(Map.entry("Source-Organization", studio()));
        }
        info.add(Map.entry("Bagging-Date", today.toString()));
        info.add(Map.entry(
                "External-Description", Message.of("exchange.pack.description").inEnglish()));
        info.add(Map.entry(
                "External-Identifier",
                Message.of("exchange.pack.identifier", "sequence", last, "hash", hash.hex())
                        .inEnglish()));
        info.add(Map.entry("Bag-Software-Agent", agent()));
        if (shared != null) {
            info.add(Map.entry(BackupFolder.FILES_LABEL, BackupFolder.BESIDE));
        }
        info.add(Map.entry(Contents.LABEL, contents.word()));
        info.add(Map.entry("Tenterbook-Last-Sequence", Long.toString(last)));
        info.add(Map.entry("Tenterbook-Last-Hash", hash.hex()));
        findings.forEach(finding -> info.add(Map.entry("Tenterbook-Damage", finding.toString())));
        leftOut.forEach(file -> info.add(Map.entry("Tenterbook-Left-Out", file)));
        return info;
    }

    /** Its name; empty where its record cannot be read, which is noted like all damage. */
    private String studio() {
        return archive.readableStudio().map(Studio::name).orElse("");
    }

    private String agent() {
        String version = Pack.class.getPackage().getImplementationVersion();
        return version == null ? "Tenterbook" : "Tenterbook " + version;
    }
}
