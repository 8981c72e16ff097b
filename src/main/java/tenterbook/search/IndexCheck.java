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
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;
import tenterbook.ledger.Unreadable;

/** Compares every entry of the index with what the ledger now gives, and the index's files with their checksums. */
final class IndexCheck {
    private IndexCheck() {}

    /** What is wrong, by piece number (or file); empty where all is well. */
    static Map<String, Finding> run(Archive archive, OutsideFacets outside, IndexSearcher searcher, Progress progress)
            throws IOException {
        Map<String, Finding> findings = new LinkedHashMap<>();
        Map<String, String> prints = prints(searcher, findings);
        Gatherer gatherer = new Gatherer(archive, outside);
        List<String> numbers = archive.ledger().everGiven(Kinds.PIECE);
        int done = 0;
        for (String number : numbers) {
            progress.orStop();
            progress.at(done++, numbers.size(), "comparing the search index");
            String found = prints.remove(number);
            try {
                compare(number, gatherer.entry(number).orElse(null), found, findings);
            } catch (Gatherer.Unindexable e) {
                if (readable(archive, number)) {
                    put(findings, number, "cannot be indexed, so no search finds it: " + e.getMessage());
                }
            }
        }
        prints.keySet().forEach(number -> put(findings, number, "is in the search index but not in the ledger"));
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
            put(findings, number, "is in the search index but withdrawn from the archive");
        } else if (entry != null && found == null) {
            put(findings, number, "is missing from the search index");
        } else if (entry != null && !entry.print().equals(found)) {
            put(findings, number, "is stale in the search index: its record, or one it names, says otherwise");
        }
    }

    private static void put(Map<String, Finding> findings, String number, String what) {
        findings.putIfAbsent(number, new Finding("piece " + number, what));
    }

    private static Map<String, String> prints(IndexSearcher searcher, Map<String, Finding> findings)
            throws IOException {
        Map<String, String> prints = new HashMap<>();
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            try {
                leaf.reader().checkIntegrity();
            } catch (IOException e) {
                findings.put("index " + leaf.ord, new Finding("search index", "is damaged: " + e.getMessage()));
            }
            Bits live = leaf.reader().getLiveDocs();
            var stored = leaf.reader().storedFields();
            for (int doc = 0; doc < leaf.reader().maxDoc(); doc++) {
                if (live == null || live.get(doc)) {
                    Document entry = stored.document(doc, Set.of(PieceDocument.NUMBER, PieceDocument.PRINT));
                    String number = entry.get(PieceDocument.NUMBER);
                    if (prints.put(number, entry.get(PieceDocument.PRINT)) != null) {
                        put(findings, number, "stands twice in the search index");
                    }
                }
            }
        }
        return prints;
    }

    /** Those found again after the ledger moved on: what was being written meanwhile is no fault. */
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
