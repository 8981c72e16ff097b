package tenterbook.search.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PlainNumber;
import tenterbook.words.Message;

/** A board pair by its identifier, and a state of it: 'B02', 'b6 I', 'B06-II', 'board B02 state II'. */
final class Boards implements Match.Matcher {
    private static final List<String> ROMAN = List.of("i", "ii", "iii", "iv", "v");
    private static final int FORMS = 5;
    private static final List<String> COUNTED = List.of(
            "1",
            "one",
            "first",
            "um",
            "primeiro",
            "2",
            "two",
            "second",
            "dois",
            "segundo",
            "3",
            "three",
            "third",
            "tres",
            "terceiro",
            "4",
            "four",
            "fourth",
            "quatro",
            "quarto",
            "5",
            "five",
            "fifth",
            "cinco",
            "quinto");

    private final WordTable words = WordTable.SHIPPED;
    private final Lexicon lexicon;

    Boards(Lexicon lexicon) {
        this.lexicon = lexicon;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        boolean noun = words.has("board", tokens.get(from));
        int at = noun ? from + 1 : from;
        Match identified = identified(tokens, at);
        if (identified != null || !noun || at >= tokens.size()) {
            return identified;
        }
        if (!tokens.get(at).number()) {
            return called(tokens, from);
        }
        String board = lexicon.boardNumbered(PlainNumber.of(tokens.get(at).text()));
        return board == null ? null : match(tokens, at + 1, board, board);
    }

    /** Letters and digits in one word. */
    private Match identified(List<Token> tokens, int at) {
        if (at + 1 >= tokens.size()
                || !tokens.get(at).word()
                || !tokens.get(at + 1).number()
                || !tokens.get(at + 1).glued()) {
            return null;
        }
        String board = lexicon.board(
                PlainNumber.of(tokens.get(at).text() + tokens.get(at + 1).text()));
        return board == null ? null : match(tokens, at + 2, board, board);
    }

    /** 'board' before words of one board's name. */
    private Match called(List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + WordTable.LONGEST); end > from + 1; end--) {
            List<String> asked = new ArrayList<>();
            for (Token token : tokens.subList(from + 1, end)) {
                if (!words.has("idle", token)) {
                    asked.add(token.text());
                }
            }
            Set<Lexicon.Name> found = lexicon.having(Facet.BOARD, asked);
            List<String> whole = found.stream()
                    .map(Lexicon.Name::value)
                    .filter(value -> value.indexOf('/') < 0)
                    .toList();
            if (whole.size() == 1) {
                Lexicon.Name name = found.iterator().next();
                return match(tokens, end, whole.get(0), name.label());
            }
        }
        return null;
    }

    /** With the state that follows, if one does. */
    Match match(List<Token> tokens, int from, String board, String label) {
        int at = from;
        String state = null;
        int end = from;
        boolean noun = at < tokens.size() && tokens.get(at).is("state", "estado", "-", "/");
        at += noun ? 1 : 0;
        if (at < tokens.size()) {
            state = state(board, tokens.get(at).text());
            end = state == null ? from : at + 1;
            if (state != null && !noun && end < tokens.size() && tokens.get(end).is("state", "estado")) {
                end++;
            }
        }
        return new Match(
                end,
                new Constraint.OfFacet(Facet.BOARD, Set.of(state == null ? FacetValues.folded(board) : state), false),
                Message.of(
                        "question.board",
                        "board",
                        label,
                        "stated",
                        state != null,
                        "state",
                        state == null
                                ? ""
                                : state.substring(state.indexOf('/') + 1).toUpperCase(Locale.ROOT)));
    }

    /** As it is named, or counted: '2', 'two' and 'second' are II. */
    private String state(String board, String typed) {
        String named = lexicon.state(board, typed);
        int place = COUNTED.indexOf(typed) / FORMS;
        return named != null || !COUNTED.contains(typed) ? named : lexicon.state(board, ROMAN.get(place));
    }
}
