package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.words.Refusal;

/**
 * Encrypted backups of an archive: {@code key.asc}; {@code photos} and {@code papers}, each file once under its digest and encrypted;
 * and under {@code ledgers}, for each generation, the encrypted bag of the ledger and the plain list of what the generation needs.
 */
public record EncryptedFolder(Path root) {
    static final String KEY = "key.asc";
    static final String PGP = ".pgp";

    private static final String ENDING = BackupFolder.ENDING + "-encrypted";
    private static final Pattern NAMED = Pattern.compile("(.+)" + ENDING + "(?:-[0-9]+)?");
    private static final String LIST = ".txt";
    private static final String LEDGER = ".zip" + PGP;

    /** One generation, whole or damaged. */
    public record Generation(EncryptedFolder folder, Instant at) {
        Path list() {
            return folder.list(at);
        }
    }

    /** Where the backups for a key go on the disk that a person chose; those for a former key stay in a folder of their own. */
    static EncryptedFolder on(Path disk, Path archive, BackupKey key) throws IOException {
        String name = archive.getFileName() + ENDING;
        EncryptedFolder folder = new EncryptedFolder(disk.resolve(name));
        for (int i = 2; !folder.isFor(key); i++) {
            folder = new EncryptedFolder(disk.resolve(name + "-" + i));
        }
        return folder;
    }

    private boolean isFor(BackupKey key) throws IOException {
        Set<String> keys = new HashSet<>();
        try {
            keys.add(key().fingerprint());
        } catch (IOException e) {
            // Lost or damaged here, it is known from the lists, and is copied again.
            for (Instant at : generations().keySet()) {
                GenerationList.read(list(at)).map(GenerationList::key).ifPresent(keys::add);
            }
        }
        return keys.isEmpty() || keys.contains(key.fingerprint());
    }

    /** @throws IOException if it is not there or damaged */
    BackupKey key() throws IOException {
        return BackupKey.read(root.resolve(KEY));
    }

    Path ledgers() {
        return root.resolve("ledgers");
    }

    Path list(Instant at) {
        return ledgers().resolve(BackupFolder.name(at) + LIST);
    }

    /** The path of the encrypted ledger from the folder. */
    static String ledger(Instant at) {
        return "ledgers/" + BackupFolder.name(at) + LEDGER;
    }

    /** The lists of generations, by the moment of each. A list is written last, so what it names was whole. */
    NavigableMap<Instant, Path> generations() throws IOException {
        NavigableMap<Instant, Path> found = new TreeMap<>();
        if (Files.isDirectory(ledgers())) {
            try (Stream<Path> inside = Files.list(ledgers())) {
                inside.forEach(each -> moment(each, LIST).ifPresent(at -> found.put(at, each)));
            }
        }
        return found;
    }

    private static Optional<Instant> moment(Path file, String ending) {
        String name = file.getFileName().toString();
        return name.endsWith(ending)
                ? BackupFolder.moment(name.substring(0, name.length() - ending.length()))
                : Optional.empty();
    }

    /** Deletes encrypted ledgers that have no list: a killed backup left them, and they are in no list of what is whole. */
    void clearLeftovers() throws IOException {
        Set<Instant> whole = generations().keySet();
        List<Path> all;
        try (Stream<Path> inside = Files.list(ledgers())) {
            all = inside.toList();
        }
        for (Path each : all) {
            boolean unlisted =
                    moment(each, LEDGER).filter(at -> !whole.contains(at)).isPresent();
            if (unlisted || each.getFileName().toString().endsWith(".part")) {
                Files.delete(each);
            }
        }
    }

    /** What a backup stored so far, a line each as in a list, so that one that was stopped is gone on with; gone once it is whole. */
    Path soFar() {
        return root.resolve("unfinished.txt");
    }

    /** The SHA-256 of every file that any list names, by its path; of a file that was written again, the newest. */
    Map<String, String> sums() throws IOException {
        Map<String, String> sums = new HashMap<>();
        for (Path list : generations().values()) {
            GenerationList.read(list).ifPresent(read -> sums.putAll(read.sums()));
        }
        if (Files.exists(soFar())) {
            sums.putAll(GenerationList.files(Files.readString(soFar())));
        }
        return sums;
    }

    /**
     * The generation that is meant: by one of its two files, the newest of a folder, or the newest of a disk with backups of one
     * archive, encrypted or not.
     *
     * @return empty where no encrypted backup is meant
     * @throws Refusal where the folder has no generation, or the disk has backups of several archives
     */
    public static Optional<Generation> generation(Path named) throws IOException {
        Path place = named.toAbsolutePath().normalize();
        if (Files.isRegularFile(place)) {
            Path ledgers = place.getParent();
            return moment(place, LIST)
                    .or(() -> moment(place, LEDGER))
                    .filter(at -> ledgers.endsWith("ledgers"))
                    .map(at -> new Generation(new EncryptedFolder(ledgers.getParent()), at));
        }
        if (!Files.isDirectory(place)) {
            return Optional.empty();
        }
        EncryptedFolder here = new EncryptedFolder(place);
        Optional<Generation> newest = here.newest();
        if (newest.isEmpty() && Files.exists(place.resolve(KEY))) {
            throw Refusal.of("backup.encrypted.none", "folder", place);
        }
        return newest.isPresent() ? newest : onDisk(place);
    }

    private Optional<Generation> newest() throws IOException {
        NavigableMap<Instant, Path> made = generations();
        return made.isEmpty() ? Optional.empty() : Optional.of(new Generation(this, made.lastKey()));
    }

    private static Optional<Generation> onDisk(Path disk) throws IOException {
        Set<String> archives = new HashSet<>();
        NavigableMap<Instant, Generation> newest = new TreeMap<>();
        NavigableMap<Instant, Path> plain = new TreeMap<>();
        List<Path> folders;
        try (Stream<Path> inside = Files.list(disk)) {
            folders = inside.filter(Files::isDirectory).toList();
        }
        for (Path each : folders) {
            String name = each.getFileName().toString();
            Matcher encrypted = NAMED.matcher(name);
            if (encrypted.matches()) {
                archives.add(encrypted.group(1));
                new EncryptedFolder(each).newest().ifPresent(found -> newest.put(found.at(), found));
            } else if (name.endsWith(BackupFolder.ENDING)) {
                archives.add(name.substring(0, name.length() - BackupFolder.ENDING.length()));
                plain.putAll(new BackupFolder(each).generations());
            }
        }
        if (!newest.isEmpty() && archives.size() > 1) {
            throw Refusal.of("backup.encrypted.several", "folder", disk);
        }
        boolean meant =
                !newest.isEmpty() && (plain.isEmpty() || !plain.lastKey().isAfter(newest.lastKey()));
        return meant ? Optional.of(newest.lastEntry().getValue()) : Optional.empty();
    }
}
