package tenterbook.search.question;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceFacets;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PlainNumber;
import tenterbook.search.query.Stems;

/** The names that an archive uses, by facet: what its boards, cloths, dyes, faults, holders and colours are called. */
public final class Lexicon {
    /** Where a name of several facets is looked for first. */
    private static final List<Facet> BY_NAME = List.of(
            Facet.STATUS,
            Facet.FIBRE,
            Facet.DYE,
            Facet.MORDANT,
            Facet.FAULT,
            Facet.COLOUR,
            Facet.CLOTH,
            Facet.BOARD,
            Facet.HOLDER,
            Facet.CATEGORY);

    /**
     * A value of a facet.
     *
     * @param value as in addresses
     * @param folded as {@link FacetTerms.Term#folded}
     * @param words of its label, folded
     */
    record Name(String value, String folded, String label, List<String> words) {}

    private final Map<Facet, List<Name>> names = new TreeMap<>();
    private final Map<Facet, Map<String, Set<Name>>> byLabel = new HashMap<>();
    private final Map<String, String> boards = new HashMap<>();
    private final Map<String, Map<String, String>> states = new HashMap<>();
    private Facet tag;

    public Lexicon(FacetTerms.Term[] terms) {
        for (FacetTerms.Term term : terms) {
            add(term);
        }
    }

    private void add(FacetTerms.Term term) {
        Facet facet = term.facet();
        String label = term.value().label();
        List<Token> tokens = Token.of(label);
        Name name = new Name(
                term.value().value(),
                term.folded(),
                label,
                tokens.stream().map(Token::text).toList());
        names.computeIfAbsent(facet, of -> new ArrayList<>()).add(name);
        for (String key : List.of(WordTable.key(tokens), sorted(name.words()))) {
            byLabel.computeIfAbsent(facet, of -> new HashMap<>())
                    .computeIfAbsent(key, of -> new LinkedHashSet<>())
                    .add(name);
        }
        if (facet.equals(Facet.BOARD)) {
            String[] parts = term.value().value().split("/", 2);
            boards.put(PlainNumber.of(parts[0]), parts[0]);
            if (parts.length == 2) {
                states.computeIfAbsent(parts[0], of -> new HashMap<>())
                        .put(FacetValues.folded(parts[1]), term.folded());
            }
        }
        if (facet.parameter().equals("tag")) {
            tag = facet;
        }
    }

    private static String sorted(Collection<String> words) {
        return '\u0001' + String.join(" ", new TreeSet<>(words));
    }

    /** The facet of hang tags, whose values another room gives; null where no piece was looked at yet. */
    Facet tag() {
        return tag;
    }

    /** The board written so, as in {@code b 6}; null for none. */
    String board(String plain) {
        return boards.get(plain);
    }

    /** The only board whose number this is, whatever letters stand before it; null for none. */
    String boardNumbered(String digits) {
        List<String> found = boards.entrySet().stream()
                .filter(each -> each.getKey().endsWith(" " + digits))
                .map(Map.Entry::getValue)
                .toList();
        return found.size() == 1 ? found.get(0) : null;
    }

    /** The value of a board's state; null where no piece was made with it. */
    String state(String board, String state) {
        return states.getOrDefault(board, Map.of()).get(state);
    }

    /** The values called exactly so, in the first facet that has any; null for none. */
    Map.Entry<Facet, Set<Name>> called(List<Token> tokens) {
        String key = WordTable.key(tokens);
        if (key.isEmpty()) {
            return null;
        }
        for (Facet facet : BY_NAME) {
            Set<Name> found = byLabel.getOrDefault(facet, Map.of()).get(key);
            if (found != null) {
                return Map.entry(facet, found);
            }
        }
        return null;
    }

    /** The faults whose words are these in whatever order. */
    Set<Name> fault(Collection<String> words) {
        return byLabel.getOrDefault(Facet.FAULT, Map.of()).getOrDefault(sorted(words), Set.of());
    }

    /** The values of a facet whose labels have forms of all these words. */
    Set<Name> having(Facet facet, Collection<String> words) {
        Set<Name> found = new LinkedHashSet<>();
        for (Name name : names.getOrDefault(facet, List.of())) {
            if (!words.isEmpty() && Stems.allAmong(words, name.words())) {
                found.add(name);
            }
        }
        return found;
    }

    /** The cloths whose titles have forms of these words, two or more, in a row, of which not all are fibres. */
    Set<Name> cloths(List<Token> tokens) {
        Set<Name> found = new LinkedHashSet<>();
        boolean asked = tokens.size() > 1
                && tokens.stream().allMatch(Token::word)
                && !tokens.stream().allMatch(token -> WordTable.SHIPPED.value("fibre", List.of(token)) != null);
        for (Name name : asked ? all(Facet.CLOTH) : List.<Name>of()) {
            for (int from = 0; from + tokens.size() <= name.words().size(); from++) {
                boolean all = true;
                for (int i = 0; all && i < tokens.size(); i++) {
                    all = Stems.alike(tokens.get(i).text(), name.words().get(from + i));
                }
                if (all) {
                    found.add(name);
                }
            }
        }
        return found;
    }

    /** The cloths whose fibres are not recorded. */
    List<Name> clothsWithoutFibres() {
        return all(Facet.FIBRE_OR_NAME).stream()
                .filter(name -> name.value().startsWith(PieceFacets.CLOTH))
                .toList();
    }

    /** The names of colours that have one of the hue's words, and one of the depth's where any is asked. */
    Set<Name> colours(Set<String> hue, Set<String> depth) {
        Set<Name> found = new LinkedHashSet<>();
        for (Name name : names.getOrDefault(Facet.COLOUR, List.of())) {
            if (name.words().stream().anyMatch(hue::contains)
                    && (depth.isEmpty() || name.words().stream().anyMatch(depth::contains))) {
                found.add(name);
            }
        }
        return found;
    }

    /** The words of the names that are looked for by name. */
    Set<String> words() {
        Set<String> words = new TreeSet<>();
        BY_NAME.forEach(facet -> all(facet).forEach(name -> words.addAll(name.words())));
        return words;
    }

    List<Name> all(Facet facet) {
        return names.getOrDefault(facet, List.of());
    }

    static Set<String> folded(Collection<Name> names) {
        Set<String> folded = new LinkedHashSet<>();
        names.forEach(name -> folded.add(name.folded()));
        return folded;
    }

    /** The labels, each once, as people read them. */
    static List<String> labels(Collection<Name> names) {
        Map<String, String> once = new LinkedHashMap<>();
        names.forEach(name -> once.putIfAbsent(name.label(), name.label()));
        return List.copyOf(once.values());
    }
}
