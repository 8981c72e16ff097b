package tenterbook.search.question;

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
    private final Lexicon lexicon;

    Boards(Lexicon lexicon) {
        this.lexicon = lexicon;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        if (from + 1 >= tokens.size()
                || !tokens.get(from).word()
                || !tokens.get(from + 1).number()
                || !tokens.get(from + 1).glued()) {
            return null;
        }
        String board = lexicon.board(
                PlainNumber.of(tokens.get(from).text() + tokens.get(from + 1).text()));
        if (board == null) {
            return null;
        }
        int at = from + 2;
        if (at < tokens.size() && tokens.get(at).is("-", "/", "state", "estado")) {
            at++;
        }
        String state = at < tokens.size() ? lexicon.state(board, tokens.get(at).text()) : null;
        String value = state == null ? FacetValues.folded(board) : state;
        return new Match(
                state == null ? from + 2 : at + 1,
                new Constraint.OfFacet(Facet.BOARD, Set.of(value), false),
                Message.of(
                        "question.board",
                        "board",
                        board,
                        "stated",
                        state != null,
                        "state",
                        state == null ? "" : tokens.get(at).text().toUpperCase(Locale.ROOT)));
    }
}
