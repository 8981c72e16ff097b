package tenterbook.search.question;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Lacking;
import tenterbook.search.query.Stems;
import tenterbook.words.Message;

/**
 * Words that name a value of a facet: the archive's own names as they are written, words of the table for them in two languages, and
 * for cloths, dyes and mordants a word of the name.
 */
final class Names implements Match.Matcher {
    /** A shorter word of a name is none: it may be 'the'. */
    private static final int SHORTEST_PART = 3;
    /** More names than these are counted in a label, not listed. */
    private static final int MOST_LISTED = 3;

    private static final Map<String, Facet> FACETS = Map.of(
            "status", Facet.STATUS,
            "category", Facet.CATEGORY,
            "fibre", Facet.FIBRE,
            "dye", Facet.DYE,
            "mordant", Facet.MORDANT,
            "fault", Facet.FAULT);
    private static final List<String> OF_TABLE = List.of("status", "category", "fibre", "mordant", "dye", "fault");

    private final WordTable words = WordTable.SHIPPED;
    private final Lexicon lexicon;

    private final Boards boards;

    Names(Lexicon lexicon, Boards boards) {
        this.lexicon = lexicon;
        this.boards = boards;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + WordTable.LONGEST); end > from; end--) {
            Match match = exactly(tokens, from, end);
            if (match != null) {
                return match;
            }
        }
        Match wood = wood(tokens, from);
        if (wood != null) {
            return wood;
        }
        Match holder = holder(tokens, from);
        return holder != null ? holder : part(tokens.get(from), from + 1);
    }

    private Match exactly(List<Token> tokens, int from, int end) {
        List<Token> some = tokens.subList(from, end);
        Match match = plain(some, end);
        if (match == null) {
            match = colour(some, end);
        }
        Map.Entry<Facet, Set<Lexicon.Name>> called = match == null ? lexicon.called(some) : null;
        if (called != null) {
            match = called.getKey().equals(Facet.BOARD)
                    ? board(tokens, called.getValue(), end)
                    : match(called.getKey(), called.getValue(), end);
        }
        for (int i = 0; match == null && i < OF_TABLE.size(); i++) {
            match = ofTable(OF_TABLE.get(i), some, end);
        }
        if (match == null) {
            match = board(tokens, from, end);
        }
        Set<Lexicon.Name> cloths = match == null ? lexicon.cloths(some) : Set.of();
        if (!cloths.isEmpty()) {
            return match(Facet.CLOTH, cloths, end);
        }
        return match != null ? match : fault(some, end);
    }

    /** Facts without a value of their own. */
    private Match plain(List<Token> some, int end) {
        if (words.value("any", some) != null) {
            return new Match(
                    end,
                    new Constraint.OfFacet(Facet.FAULT, Lexicon.folded(lexicon.all(Facet.FAULT)), false),
                    Message.of("question.any-fault"));
        }
        if (words.value("made", some) != null) {
            return new Match(
                            end,
                            new Constraint.OfFacet(Facet.LACKING, Set.of(Lacking.BOARD.code()), true),
                            Message.of("question.board-clamped"))
                    .weighing();
        }
        String tag = words.value("tag", some);
        if (tag != null && lexicon.tag() != null) {
            Set<String> printed = new LinkedHashSet<>();
            lexicon.all(lexicon.tag()).stream()
                    .map(Lexicon.Name::folded)
                    .filter(value -> value.endsWith(":current") || value.endsWith(":out-of-date"))
                    .forEach(printed::add);
            return new Match(
                    end,
                    new Constraint.OfFacet(lexicon.tag(), printed, tag.equals("none")),
                    Message.of("question.tag", "printed", !tag.equals("none")));
        }
        if (words.value("examined", some) != null) {
            return new Match(
                    end,
                    new Constraint.OfFacet(Facet.EXAMINED, Set.of("never"), false),
                    Message.of("question.never-examined"));
        }
        String instead = words.value("unstatus", some);
        if (instead != null) {
            Set<String> values = WordTable.words(instead);
            Message label = label(Facet.STATUS, choices(Facet.STATUS, values));
            return new Match(
                    end, new Constraint.OfFacet(Facet.STATUS, values, true), Message.of("question.not", "what", label));
        }
        String has = words.value("has", some);
        if (has != null) {
            Constraint.OfFacet recorded = new Constraint.OfFacet(Facet.LACKING, Set.of(has), true);
            return new Match(end, recorded, having(recorded));
        }
        String lacks = words.value("lacks", some);
        lacks = lacks == null ? unrecorded(some) : lacks;
        String lacking = lacks == null ? words.value("lacking", some) : lacks;
        if (lacking == null) {
            return null;
        }
        return new Match(
                end,
                new Constraint.OfFacet(Facet.LACKING, Set.of(lacking), false),
                Message.of("question.lacks", "what", Message.of("question.lacking." + lacking)),
                lacks == null,
                false,
                List.of(),
                false);
    }

    /** What 'price not recorded' and the like say is lacking; null where they do not. */
    private String unrecorded(List<Token> some) {
        for (int split = 1; split < some.size(); split++) {
            if (words.value("unrecorded", some.subList(split, some.size())) != null) {
                return words.value("lacking", some.subList(0, split));
            }
        }
        return null;
    }

    /** @param lacking one thing that a piece can lack */
    static Message having(Constraint.OfFacet lacking) {
        return Message.of(
                "question.has",
                "what",
                Message.of("question.lacking." + lacking.values().iterator().next()));
    }

    private Match ofTable(String kind, List<Token> some, int end) {
        String value = words.value(kind, some);
        if (value == null) {
            return null;
        }
        Facet facet = FACETS.get(kind);
        if (facet.equals(Facet.STATUS) || facet.equals(Facet.CATEGORY)) {
            Set<String> values = WordTable.words(value);
            return new Match(end, new Constraint.OfFacet(facet, values, false), label(facet, choices(facet, values)));
        }
        Set<Lexicon.Name> names = lexicon.having(facet, List.of(value.split(" ")));
        if (facet.equals(Facet.FIBRE)) {
            return fibre(value, names, end);
        }
        if (names.isEmpty()) {
            // A fault that no piece has may still stand in a note; a dye of the trade that no piece has was not used.
            return facet.equals(Facet.FAULT)
                    ? null
                    : new Match(end, new Constraint.OfFacet(facet, Set.of(), false), label(facet, List.of(value)))
                            .offeringRelatives(facet.equals(Facet.DYE) ? relatives(value) : List.of());
        }
        return match(facet, names, end);
    }

    /** Dyes of the archive that are the same dye from another plant. */
    private List<String> relatives(String dye) {
        String relative = words.value("relative", Token.of(dye));
        boolean used = relative != null
                && !lexicon.having(Facet.DYE, List.of(relative.split(" "))).isEmpty();
        return used ? List.of(relative) : List.of();
    }

    private static List<Message> choices(Facet facet, Set<String> values) {
        String bundle = facet.equals(Facet.STATUS) ? "piece.status." : "piece.category.";
        List<Message> labels = new ArrayList<>();
        values.forEach(value -> labels.add(Message.of(bundle + CATEGORY_KEYS.getOrDefault(value, value))));
        return labels;
    }

    /** Where the word for people is kept under another key than the value. */
    private static final Map<String, String> CATEGORY_KEYS =
            Map.of("cushion", "cushion-cover", "sample", "sample-or-proof");

    private Match colour(List<Token> some, int end) {
        Set<String> hue = Set.of();
        Set<String> depth = Set.of();
        for (int split = 0; split <= some.size(); split++) {
            List<Token> first = some.subList(0, split);
            List<Token> rest = some.subList(split, some.size());
            String before = first.isEmpty() ? "" : words.value("depth", first);
            String after = rest.isEmpty() ? "" : words.value("hue", rest);
            if (before == null || after == null || after.isEmpty()) {
                // 'azul escuro': the depth stands behind.
                after = first.isEmpty() ? "" : words.value("hue", first);
                before = rest.isEmpty() ? "" : words.value("depth", rest);
            }
            if (before != null && after != null && !after.isEmpty()) {
                hue = WordTable.words(after);
                depth = before.isEmpty() ? Set.of() : WordTable.words(before);
            }
        }
        Set<Lexicon.Name> names = hue.isEmpty() ? Set.of() : lexicon.colours(hue, depth);
        if (names.isEmpty()) {
            return null;
        }
        Match match = match(Facet.COLOUR, names, end);
        return match.weighing();
    }

    /** 'lime wood' and 'wood: lime': what the boards are of. */
    private Match wood(List<Token> tokens, int from) {
        for (int noun = from; noun <= from + 1 && noun < tokens.size(); noun++) {
            int name = noun == from ? from + 1 : from;
            if (words.has("wood", tokens.get(noun))
                    && name < tokens.size()
                    && tokens.get(name).word()) {
                Set<Lexicon.Name> found =
                        lexicon.having(Facet.WOOD, List.of(tokens.get(name).text()));
                if (!found.isEmpty()) {
                    return match(Facet.WOOD, found, from + 2);
                }
            }
        }
        return null;
    }

    /** Words of a board's name before 'board'. */
    private Match board(List<Token> tokens, int from, int end) {
        if (end >= tokens.size() || !words.has("board", tokens.get(end))) {
            return null;
        }
        List<String> asked = meaning(tokens.subList(from, end));
        Set<Lexicon.Name> found = lexicon.having(Facet.BOARD, asked);
        return found.isEmpty() ? null : board(tokens, found, end + 1);
    }

    /** With the state that follows the name of one board. */
    private Match board(List<Token> tokens, Set<Lexicon.Name> names, int end) {
        List<Lexicon.Name> whole =
                names.stream().filter(name -> name.value().indexOf('/') < 0).toList();
        return whole.size() == 1
                ? boards.match(tokens, end, whole.get(0).value(), whole.get(0).label())
                : match(Facet.BOARD, names, end);
    }

    /** The words of a fault in another order, as in 'inner layers too pale'. */
    private Match fault(List<Token> some, int end) {
        if (some.size() < 2) {
            return null;
        }
        List<String> asked = meaning(some);
        asked.removeIf(word -> word.equals("too"));
        Set<Lexicon.Name> found = lexicon.fault(asked);
        return found.isEmpty() ? null : match(Facet.FAULT, found, end);
    }

    /** 'at', 'to' or 'from' before some words of a holder's name. */
    private Match holder(List<Token> tokens, int from) {
        WordTable.Found before = words.longest("holder", tokens, from);
        if (before == null) {
            return null;
        }
        for (int end = Math.min(tokens.size(), before.end() + 4); end > before.end(); end--) {
            List<String> asked = meaning(tokens.subList(before.end(), end));
            if (asked.stream().allMatch(word -> word.length() > SHORTEST_PART)) {
                Set<Lexicon.Name> found = lexicon.having(Facet.HOLDER, asked);
                if (!found.isEmpty()) {
                    return match(Facet.HOLDER, found, end);
                }
            }
        }
        return null;
    }

    private Match part(Token token, int end) {
        if (!token.word()
                || token.text().length() < SHORTEST_PART
                || words.has("idle", token)
                || words.has("noun", token)) {
            return null;
        }
        for (Facet facet : List.of(Facet.FIBRE, Facet.DYE, Facet.MORDANT, Facet.CLOTH)) {
            Set<Lexicon.Name> found = lexicon.having(facet, List.of(token.text()));
            if (!found.isEmpty()) {
                return facet.equals(Facet.FIBRE) ? fibre(token.text(), found, end) : match(facet, found, end);
            }
        }
        return null;
    }

    /** Without words that mean nothing. */
    private List<String> meaning(List<Token> tokens) {
        List<String> kept = new ArrayList<>();
        for (Token token : tokens) {
            if (token.kind() == Token.Kind.QUOTED || token.kind() == Token.Kind.SIGN && !token.is("-")) {
                return new ArrayList<>();
            }
            // English 'no' denies; in Portuguese it is 'in the'.
            if (token.kind() != Token.Kind.SIGN && (!words.has("idle", token) || words.has("deny", token))) {
                kept.add(token.text());
            }
        }
        return kept;
    }

    private Match match(Facet facet, Set<Lexicon.Name> names, int end) {
        if (facet.equals(Facet.FIBRE)) {
            return fibre(names.iterator().next().label(), names, end);
        }
        return new Match(
                end, new Constraint.OfFacet(facet, Lexicon.folded(names), false), label(facet, Lexicon.labels(names)));
    }

    /**
     * A fibre as recorded, and the cloths that are called after it and whose fibres are not recorded.
     *
     * @param fibre as it is called
     * @param recorded may be empty
     */
    private Match fibre(String fibre, Set<Lexicon.Name> recorded, int end) {
        Message label = label(Facet.FIBRE, recorded.isEmpty() ? List.of(fibre) : Lexicon.labels(recorded));
        List<Lexicon.Name> cloths = lexicon.clothsWithoutFibres();
        if (cloths.isEmpty()) {
            return new Match(end, new Constraint.OfFacet(Facet.FIBRE, Lexicon.folded(recorded), false), label);
        }
        Set<Lexicon.Name> called = new LinkedHashSet<>();
        for (Lexicon.Name cloth : cloths) {
            if (Stems.allAmong(fibres(Token.of(fibre)), fibres(Token.of(cloth.label())))) {
                called.add(cloth);
            }
        }
        Set<String> values = Lexicon.folded(recorded);
        values.addAll(Lexicon.folded(called));
        return new Match(
                end,
                new Constraint.OfFacet(Facet.FIBRE_OR_NAME, values, false),
                called.isEmpty()
                        ? label
                        : Message.of(
                                "question.fibre-by-name",
                                "what",
                                label,
                                "cloths",
                                String.join(", ", Lexicon.labels(called))));
    }

    /** Words, those for a fibre as the table has it. */
    private List<String> fibres(List<Token> tokens) {
        return tokens.stream()
                .map(token -> {
                    String known = words.value("fibre", List.of(token));
                    return known == null ? token.text() : known;
                })
                .toList();
    }

    private static Message label(Facet facet, Collection<?> values) {
        List<?> all = List.copyOf(values);
        return Message.of(
                "question.facet",
                "facet",
                facet.label(),
                "count",
                all.size(),
                "first",
                all.get(0),
                "second",
                all.size() > 1 ? all.get(1) : "",
                "third",
                all.size() > 2 ? all.get(2) : "",
                "more",
                Math.max(0, all.size() - MOST_LISTED));
    }
}
