package tenterbook.search.suggest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.StringHelper;
import org.apache.lucene.util.automaton.Automata;
import org.apache.lucene.util.automaton.Automaton;
import org.apache.lucene.util.automaton.CompiledAutomaton;
import org.apache.lucene.util.automaton.LevenshteinAutomata;
import org.apache.lucene.util.automaton.Operations;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.index.SuggestTerms;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.Letters;

/** Reads suggestions from the terms that {@link SuggestTerms} wrote: as typed first, then one letter off. */
public final class Suggester {
    /** Terms looked at for each kind and segment; a short prefix has far more numbers and titles than can be offered. */
    private static final int MOST_LOOKED_AT = 200;

    private final IndexSearcher searcher;
    private final String typed;
    private final String squashed;

    private Suggester(IndexSearcher searcher, String typed) {
        this.searcher = searcher;
        this.typed = FacetValues.folded(typed);
        this.squashed = FacetValues.squashed(typed);
    }

    public static List<Suggestion> of(IndexSearcher searcher, String typed, int limit) throws IOException {
        Suggester suggester = new Suggester(searcher, typed);
        if (suggester.squashed.isEmpty() || typed.length() > 60) {
            return List.of();
        }
        Map<String, Integer> exact = new HashMap<>();
        for (char kind : SuggestTerms.KINDS.keySet()) {
            suggester.starting(kind + (kind == 'a' ? suggester.squashed : suggester.typed), exact);
        }
        List<Suggestion> found = suggester.ranked(exact);
        if (found.size() < limit && Letters.edits(suggester.typed) > 0) {
            Map<String, Integer> near = new HashMap<>();
            suggester.near(near);
            Set<Suggestion> known = new HashSet<>(found);
            suggester.ranked(near).stream().filter(known::add).forEach(found::add);
        }
        return found.stream().limit(limit).toList();
    }

    private void starting(String start, Map<String, Integer> found) throws IOException {
        BytesRef prefix = new BytesRef(start);
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            Terms terms = leaf.reader().terms(PieceDocument.SUGGEST);
            if (terms == null) {
                continue;
            }
            TermsEnum each = terms.iterator();
            boolean more = each.seekCeil(prefix) != TermsEnum.SeekStatus.END;
            for (int i = 0; more && i < MOST_LOOKED_AT && StringHelper.startsWith(each.term(), prefix); i++) {
                count(each, leaf.reader().getLiveDocs(), found);
                more = each.next() != null;
            }
        }
    }

    /** All kinds but numbers, with one automaton: making it costs more than walking it. */
    private void near(Map<String, Integer> found) throws IOException {
        int edits = typed.length() < 8 ? 1 : 2;
        Automaton spelt = new LevenshteinAutomata(typed, true).toAutomaton(edits);
        Automaton going =
                Operations.concatenate(List.of(Automata.makeCharRange('b', 'g'), spelt, Automata.makeAnyString()));
        CompiledAutomaton compiled = new CompiledAutomaton(Operations.determinize(going, 100_000), false, true);
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            Terms terms = leaf.reader().terms(PieceDocument.SUGGEST);
            if (terms == null) {
                continue;
            }
            TermsEnum each = compiled.getTermsEnum(terms);
            for (int i = 0; i < MOST_LOOKED_AT && each.next() != null; i++) {
                count(each, leaf.reader().getLiveDocs(), found);
            }
        }
    }

    /** Adds the living pieces of a term; one held only by withdrawn or renamed entries counts nothing. */
    private static void count(TermsEnum term, Bits live, Map<String, Integer> found) throws IOException {
        int pieces = term.docFreq();
        if (live != null) {
            pieces = 0;
            PostingsEnum each = term.postings(null, PostingsEnum.NONE);
            while (each.nextDoc() != DocIdSetIterator.NO_MORE_DOCS) {
                pieces += live.get(each.docID()) ? 1 : 0;
            }
        }
        if (pieces > 0) {
            found.merge(term.term().utf8ToString(), pieces, Integer::sum);
        }
    }

    private List<Suggestion> ranked(Map<String, Integer> found) {
        Map<String, Suggestion> best = new HashMap<>();
        Map<Suggestion, Boolean> whole = new HashMap<>();
        found.forEach((term, pieces) -> {
            String[] part = term.substring(1).split(String.valueOf(SuggestTerms.BETWEEN), 3);
            Suggestion made = new Suggestion(SuggestTerms.KINDS.get(term.charAt(0)), part[1], part[2], pieces);
            best.putIfAbsent(term.charAt(0) + part[1] + SuggestTerms.BETWEEN + part[2], made);
            whole.merge(made, part[0].equals(typed), Boolean::logicalOr);
        });
        List<String> kinds = List.copyOf(SuggestTerms.KINDS.values());
        List<Suggestion> ranked = new ArrayList<>(best.values());
        ranked.sort(Comparator.comparing((Suggestion one) -> !whole.getOrDefault(one, false))
                .thenComparing(
                        one -> one.kind().equals("number") && squashed.chars().noneMatch(Character::isDigit))
                .thenComparingInt(one -> kinds.indexOf(one.kind()))
                .thenComparingInt(one -> -one.pieces())
                .thenComparing(Suggestion::text));
        return spread(ranked);
    }

    /** No kind takes more than five of the first places, so that titles do not push out the dye of the same name. */
    private static List<Suggestion> spread(List<Suggestion> ranked) {
        Map<String, Integer> taken = new HashMap<>();
        List<Suggestion> first = new ArrayList<>();
        List<Suggestion> later = new ArrayList<>();
        for (Suggestion one : ranked) {
            (taken.merge(one.kind(), 1, Integer::sum) <= 5 ? first : later).add(one);
        }
        first.addAll(later);
        return first;
    }
}
