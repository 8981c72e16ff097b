package tenterbook.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.util.Bits;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Unreadable;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.index.PieceFactsLoader;
import tenterbook.words.Message;

/** Compares every entry of the index with what the ledger now gives, and the index's files with their checksums. */
final class IndexCheck {
    private IndexCheck() {}

    /** What is wrong, by piece number (or file); empty where all is well. */
    static Map<String, Finding> run(Archive archive, OutsideFacets outside, IndexSearcher searcher, Progress progress)
            throws IOException {
        Map<String, Finding> findings = new LinkedHashMap<>();
        Map<String, String> prints = prints(searcher, findings);
        PieceFactsLoader loader = new PieceFactsLoader(archive, outside);
        List<String> numbers = archive.ledger().allIdsEverUsed(Kinds.PIECE);
        String comparing = Message.of("search.check.comparing").inEnglish();
        int done = 0;
        for (String number : numbers) {
            progress.orStop();
            progress.at(done++, numbers.size(), comparing);
            String found = prints.remove(number);
            try {
                compare(number, loader.entry(number).orElse(null), found, findings);
            } catch (PieceFactsLoader.Unindexable e) {
                if (readable(archive, number)) {
                    put(
                            findings,
                            number,
                            Message.of("search.check.not-indexed", "why", String.valueOf(e.getMessage())));
                }
            }
        }
        prints.keySet().forEach(number -> put(findings, number, Message.of("search.check.not-in-ledger")));
        return findings;
    }

    /** A piece that cannot be read is a finding of the check of references, and needs no second one here. */
    private static boolean readable(Archive archive, String number) {
        try {
            archive.piece(number);
            return true;
        } catch (Unreadable e) {
            return false;
        }
    }

    private static void compare(
            String number, @Nullable PieceDocument entry, @Nullable String found, Map<String, Finding> findings) {
        if (entry == null && found != null) {
            put(findings, number, Message.of("search.check.withdrawn"));
        } else if (entry != null && found == null) {
            put(findings, number, Message.of("search.check.missing"));
        } else if (entry != null && !entry.print().equals(found)) {
            put(findings, number, Message.of("search.check.stale"));
        }
    }

    private static void put(Map<String, Finding> findings, String number, Message what) {
        findings.putIfAbsent(number, finding(Message.of("search.check.piece", "number", number), what));
    }

    static Finding finding(Message where, Message what) {
        return new Finding(where.inEnglish(), what.inEnglish()).meaning(Consequence.DERIVED);
    }

    private static Map<String, String> prints(IndexSearcher searcher, Map<String, Finding> findings)
            throws IOException {
        Map<String, String> prints = new HashMap<>();
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            try {
                leaf.reader().checkIntegrity();
            } catch (IOException e) {
                findings.put(
                        "index " + leaf.ord,
                        finding(
                                Message.of("search.check.index"),
                                Message.of("search.check.damaged", "why", String.valueOf(e.getMessage()))));
            }
            Bits live = leaf.reader().getLiveDocs();
            var stored = leaf.reader().storedFields();
            for (int doc = 0; doc < leaf.reader().maxDoc(); doc++) {
                if (live == null || live.get(doc)) {
                    Document entry = stored.document(doc, Set.of(PieceDocument.NUMBER, PieceDocument.PRINT));
                    String number = entry.get(PieceDocument.NUMBER);
                    if (prints.put(number, entry.get(PieceDocument.PRINT)) != null) {
                        put(findings, number, Message.of("search.check.twice"));
                    }
                }
            }
        }
        return prints;
    }

    /** Those found again after the ledger moved on: what was being written meanwhile is no finding. */
    static List<Finding> stillThere(Map<String, Finding> first, Map<String, Finding> second) {
        List<Finding> both = new ArrayList<>();
        first.forEach((where, finding) -> {
            if (second.containsKey(where)) {
                both.add(second.get(where));
            }
        });
        return both;
    }
}
