package tenterbook.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** Checks that a valid bag is an archive of this program, before it is restored and before it gets its name. */
final class BagLedger {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    private BagLedger() {}

    /** The payload that makes an archive, by where it goes. */
    static NavigableMap<String, Path> parts(Checked checked, List<Finding> findings) {
        NavigableMap<String, Path> parts = new TreeMap<>();
        checked.payload().forEach((name, file) -> {
            String inside = name.substring("data/".length());
            if (inside.equals("ledger.db") || KeptFolder.holds(inside)) {
                parts.put(inside, file);
            } else if (inside.startsWith("ledger.db-")) {
                findings.add(new Finding(name, Message.of("exchange.restore.beside-ledger")));
            }
        });
        if (!parts.containsKey("ledger.db")) {
            findings.add(new Finding("data/ledger.db", Message.of("exchange.restore.ledger-missing")));
        } else if (!isSqlite(parts.get("ledger.db"))) {
            findings.add(new Finding("data/ledger.db", Message.of("exchange.restore.no-sqlite")));
        }
        checked.info(Contents.LABEL)
                .filter(word -> Arrays.stream(Contents.values())
                        .noneMatch(contents -> contents.word().equals(word)))
                .ifPresent(word -> findings.add(
                        new Finding("bag-info.txt", Message.of("exchange.restore.contents", "found", word))));
        return parts;
    }

    /**
     * Missing plain-text files of the ledger. No reason to refuse the bag, since the ledger itself has everything.
     *
     * @param archive opened on a copy of the bag's ledger
     */
    static List<Finding> lacks(Checked checked, Archive archive) {
        List<Finding> lacks = new ArrayList<>();
        if (!checked.payload().containsKey("data/ledger.jsonl")) {
            lacks.add(new Finding("data/ledger.jsonl", Message.of("exchange.restore.no-text")));
        }
        String earlier = "data/" + LedgerText.EARLIER;
        if (!checked.payload().containsKey(earlier)
                && !archive.ledger().earlierParts(0, 1).isEmpty()) {
            lacks.add(new Finding(earlier, Message.of("exchange.restore.no-earlier-text")));
        }
        return lacks;
    }

    private static boolean isSqlite(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(SQLITE.length), SQLITE);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * What is wrong with the ledger of a bag.
     *
     * @param archive opened on a copy of that ledger
     */
    static List<Finding> check(Checked checked, Archive archive, Progress progress) throws IOException {
        List<Finding> findings = new ArrayList<>(ArchiveCheck.ledger(archive, progress));
        sameAsText(checked, archive, findings, progress);
        return findings;
    }

    /** The ledger must match the bag's plain text and its description, where present. */
    private static void sameAsText(Checked checked, Archive archive, List<Finding> findings, Progress progress)
            throws IOException {
        String last = archive.ledger().lastHash().hex();
        checked.info("Tenterbook-Last-Hash")
                .filter(stated -> !stated.equals(last))
                .ifPresent(stated -> findings.add(new Finding(
                        "data/ledger.db", Message.of("exchange.restore.other-end", "found", last, "stated", stated))));
        Path text = checked.payload().get("data/ledger.jsonl");
        if (text != null) {
            long parts = LedgerText.partsFrom(text, archive.ledger(), progress);
            if (parts > 0) {
                findings.add(
                        new Finding("data/ledger.jsonl", Message.of("exchange.restore.other-text", "sequence", parts)));
            }
        }
        Path earlier = checked.payload().get("data/" + LedgerText.EARLIER);
        if (earlier != null && !LedgerText.sameEarlier(earlier, archive.ledger())) {
            findings.add(new Finding("data/" + LedgerText.EARLIER, Message.of("exchange.restore.other-earlier-text")));
        }
    }
}
