package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.bag.BagWriter;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;
import tenterbook.ledger.Revision;
import tenterbook.ledger.Unreadable;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** One bag being filled, from one moment of an archive that may go on meanwhile. */
final class Filling {
    private final Archive archive;
    private final Path place;
    private final Progress progress;
    private final List<Finding> findings;
    private final List<String> leftOut = new ArrayList<>();
    private final BagWriter bag;
    private final PhotoFiles photos;
    private final Pace pace;
    private final Set<String> named;
    private final long last;
    private final LocalDate today;
    private long photosIn;

    Filling(Archive archive, Path whole, Path place, LocalDate today, Progress progress, List<Finding> findings)
            throws IOException {
        this.archive = archive;
        this.place = place;
        this.today = today;
        this.progress = progress;
        this.findings = findings;
        this.bag = new BagWriter(whole);
        progress.at(0, 0, Message.of("exchange.pack.copying-ledger"));
        this.last = archive.ledger().copyToKeep(bag.place("ledger.db"));
        // In this order: an original is on the disk before the ledger names it, so none can seem to be missing.
        this.named = new HashSet<>(archive.ledger().everGiven(Kinds.PHOTO));
        this.photos = PhotoFiles.in(archive.folder().photos());
        this.pace = new Pace(progress, photos.bytes() + Files.size(bag.place("ledger.db")));
    }

    Bag fill(Damage damage) throws IOException {
        pace.begin(Message.of("exchange.pack.copying-ledger"));
        bag.written("ledger.db", pace);
        new LedgerText(archive, last, progress).write(bag, pace);
        photographs();
        if (!findings.isEmpty() && damage == Damage.REFUSED) {
            throw new PackRefused(findings, Message.of("exchange.pack.mend"));
        }
        Digest hash = last == 0
                ? Revision.NONE
                : archive.ledger().after(last - 1, 1).get(0).hash();
        Contents contents = Contents.EVERYTHING;
        readMe(contents, hash);
        bag.finish(info(contents, hash));
        return new Bag(place, bag.files(), bag.bytes(), last, hash, photosIn, findings, leftOut, contents);
    }

    private void photographs() throws IOException {
        Set<String> missing = new HashSet<>(named);
        for (Map.Entry<Digest, List<PhotoFiles.Photograph>> entry :
                photos.originals().entrySet()) {
            String hex = entry.getKey().hex();
            missing.remove(hex);
            for (PhotoFiles.Photograph photo : entry.getValue()) {
                pace.begin(Message.of(
                        "exchange.pack.copying-photo",
                        "photograph",
                        entry.getKey().brief()));
                copy(photo, hex, named.contains(hex));
            }
        }
        missing.stream().sorted().map(PhotoCheck::missing).forEach(findings::add);
        photos.strange().forEach(file -> leftOut.add("photos/" + file.getFileName()));
    }

    private void copy(PhotoFiles.Photograph photo, String hex, boolean named) throws IOException {
        String path = "photos/" + photo.path();
        Sums sums = bag.copy(photo.file(), path, pace);
        String found = sums.hex().get("sha256");
        photosIn++;
        if (found.equals(hex)) {
            return;
        }
        if (named) {
            findings.add(PhotoCheck.changed(photo.path(), found));
        } else {
            bag.remove(path);
            photosIn--;
            leftOut.add(path);
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
                "photos", Long.toString(photosIn),
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
        info.add(Map.entry(Contents.LABEL, contents.word()));
        info.add(Map.entry("Tenterbook-Last-Sequence", Long.toString(last)));
        info.add(Map.entry("Tenterbook-Last-Hash", hash.hex()));
        findings.forEach(finding -> info.add(Map.entry("Tenterbook-Damage", finding.toString())));
        leftOut.forEach(file -> info.add(Map.entry("Tenterbook-Left-Out", file)));
        return info;
    }

    /** Its name, or empty: a record of it that cannot be read is noted like all damage and keeps no bag from being made. */
    private String studio() {
        try {
            return archive.studio().name();
        } catch (Unreadable e) {
            return "";
        }
    }

    private String agent() {
        String version = Pack.class.getPackage().getImplementationVersion();
        return version == null ? "Tenterbook" : "Tenterbook " + version;
    }
}
