package tenterbook.exchange;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagWriter;
import tenterbook.exchange.bag.Pace;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/** The ledger as plain text: every revision on a line, and the records in use by kind. */
final class LedgerText {
    /** What the first revision of format 2 commits to, where there are revisions of format 1 before it. */
    static final String EARLIER = "ledger-before.jsonl";

    private static final int PAGE = 500;
    private final Ledger ledger;
    private final long last;
    private final Progress progress;

    /** @param last the sequence to stop after, so that text and database say the same while the archive goes on */
    LedgerText(Archive archive, long last, Progress progress) {
        this.ledger = archive.ledger();
        this.last = last;
        this.progress = progress;
    }

    private interface Each<T> {
        void take(T revision) throws IOException;
    }

    void write(BagWriter bag, Pace pace) throws IOException {
        Map<RecordKey, Long> newest = new HashMap<>();
        try (BufferedWriter lines = Files.newBufferedWriter(bag.place("ledger.jsonl"))) {
            each(revision -> {
                for (String line : revision.lines()) {
                    lines.write(line);
                    lines.write('\n');
                }
                newest.put(revision.key(), revision.sequence());
            });
        }
        bag.written("ledger.jsonl", pace);
        if (!ledger.earlierParts(0, 1).isEmpty()) {
            try (BufferedWriter lines = Files.newBufferedWriter(bag.place(EARLIER))) {
                eachEarlier(ledger, part -> {
                    lines.write(part.line());
                    lines.write('\n');
                });
            }
            bag.written(EARLIER, pace);
        }
        for (String path : records(bag, newest)) {
            bag.written(path, pace);
        }
    }

    /** One JSON array per kind, a record on each line. */
    private List<String> records(BagWriter bag, Map<RecordKey, Long> newest) throws IOException {
        Map<String, Writer> open = new TreeMap<>();
        List<String> written = new ArrayList<>();
        try {
            each(revision -> {
                if (revision.withdrawn() || newest.get(revision.key()) != revision.sequence()) {
                    return;
                }
                String path = "records/%s.json".formatted(revision.key().kind().replaceAll("[^a-z0-9-]", "_"));
                Writer writer = open.get(path);
                if (writer == null) {
                    writer = Files.newBufferedWriter(bag.place(path), StandardCharsets.UTF_8);
                    open.put(path, writer);
                    writer.write("[\n");
                } else {
                    writer.write(",\n");
                }
                writer.write(Canonical.json(revision.json()));
            });
            for (Map.Entry<String, Writer> entry : open.entrySet()) {
                entry.getValue().write("\n]\n");
                written.add(entry.getKey());
            }
        } finally {
            for (Writer writer : open.values()) {
                writer.close();
            }
        }
        return written;
    }

    private void each(Each<Revision> take) throws IOException {
        long sequence = 0;
        while (sequence < last) {
            List<Revision> page = ledger.after(sequence, PAGE);
            if (page.isEmpty()) {
                return;
            }
            for (Revision revision : page) {
                if (revision.sequence() <= last) {
                    take.take(revision);
                }
                sequence = revision.sequence();
            }
            progress.at(Math.min(sequence, last), last, Message.of("exchange.pack.writing-text"));
            progress.orStop();
        }
    }

    private static void eachEarlier(Ledger ledger, Each<EarlierPart> take) throws IOException {
        long sequence = 0;
        List<EarlierPart> page;
        do {
            page = ledger.earlierParts(sequence, PAGE);
            for (EarlierPart part : page) {
                take.take(part);
                sequence = part.revision().sequence();
            }
        } while (!page.isEmpty());
    }

    /** Whether the text of what is committed to is the ledger's own. */
    static boolean sameEarlier(Path text, Ledger ledger) throws IOException {
        boolean[] same = {true};
        try (var lines = Files.newBufferedReader(text)) {
            eachEarlier(ledger, part -> same[0] &= part.line().equals(lines.readLine()));
            return same[0] && lines.readLine() == null;
        }
    }

    /** Where the text of a bag parts from a ledger; 0 where they say the same line by line. */
    static long partsFrom(Path text, Ledger ledger, Progress progress) throws IOException {
        long sequence = 0;
        try (var lines = Files.newBufferedReader(text)) {
            List<Revision> page;
            do {
                page = ledger.after(sequence, PAGE);
                for (Revision revision : page) {
                    for (String line : revision.lines()) {
                        if (!line.equals(lines.readLine())) {
                            return revision.sequence();
                        }
                    }
                    sequence = revision.sequence();
                }
                progress.orStop();
            } while (!page.isEmpty());
            return lines.readLine() == null ? 0 : sequence + 1;
        }
    }
}
