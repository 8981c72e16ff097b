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
import tenterbook.ledger.Canonical;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Progress;
import tenterbook.ledger.RecordKey;
import tenterbook.ledger.Revision;

/** The ledger as plain text: every revision on a line, and the records in use by kind. */
final class LedgerText {
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

    private interface Each {
        void take(Revision revision) throws IOException;
    }

    void write(BagWriter bag, Pace pace) throws IOException {
        Map<RecordKey, Long> newest = new HashMap<>();
        try (BufferedWriter lines = Files.newBufferedWriter(bag.place("ledger.jsonl"))) {
            each(revision -> {
                lines.write(revision.line());
                lines.write('\n');
                newest.put(revision.key(), revision.sequence());
            });
        }
        bag.written("ledger.jsonl", pace);
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

    private void each(Each take) throws IOException {
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
            progress.at(Math.min(sequence, last), last, "writing the ledger as text");
            progress.orStop();
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
                    if (!revision.line().equals(lines.readLine())) {
                        return revision.sequence();
                    }
                    sequence = revision.sequence();
                }
                progress.orStop();
            } while (!page.isEmpty());
            return lines.readLine() == null ? 0 : sequence + 1;
        }
    }
}
