package tenterbook.search.question;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.PlainNumber;
import tenterbook.words.Message;

/** The number of a piece in any writing: 'V24-7', '24-007', 'v24 12', 'piece 7', and '7' where nothing else is asked. */
final class Numbers implements Match.Matcher {
    private static final int LONGEST = 6;

    private final WordTable words = WordTable.SHIPPED;
    private final QuestionReader.Pieces pieces;

    Numbers(QuestionReader.Pieces pieces) {
        this.pieces = pieces;
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        int first = from;
        while (first < tokens.size() && words.has("piece", tokens.get(first))) {
            first++;
        }
        boolean named = first > from || listed(tokens, from);
        for (int end = Math.min(tokens.size(), first + LONGEST); end > first; end--) {
            String plain = plain(tokens.subList(first, end));
            if (plain.isEmpty()) {
                continue;
            }
            boolean alone = end - first == 1;
            boolean asked = alone ? named || tokens.size() == 1 : true;
            List<String> known = asked ? pieces.numbered(plain) : List.of();
            if (!known.isEmpty() || !alone && missing(plain)) {
                return new Match(
                        end,
                        new Constraint.OfPieceNumber(plain, false),
                        Message.of(
                                "question.piece",
                                "count",
                                known.size(),
                                "number",
                                known.isEmpty() ? typed(tokens.subList(first, end)) : known.get(0)));
            }
        }
        return null;
    }

    /** Whether a number goes on a list of numbers, as in 'pieces 7, 8 and 12'. */
    private boolean listed(List<Token> tokens, int from) {
        int at = from - 1;
        while (at >= 0 && (tokens.get(at).number() || tokens.get(at).is("and", "or", "e", "ou", "-"))) {
            at--;
        }
        return at >= 0 && words.has("piece", tokens.get(at));
    }

    /** Written as the archive writes numbers, but no piece has it. */
    private boolean missing(String plain) {
        int last = plain.lastIndexOf(' ');
        return Character.isLetter(plain.charAt(0))
                && plain.indexOf(' ') < last
                && pieces.beginning(plain.substring(0, last + 1));
    }

    /** A number that no piece has, with the capitals that numbers have. */
    private static String typed(List<Token> tokens) {
        return tokens.stream().map(Token::text).collect(Collectors.joining()).toUpperCase(Locale.ROOT);
    }

    /** Letters at most in front, then digits; empty for anything else. */
    private static String plain(List<Token> tokens) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < tokens.size(); i++) {
            Token token = tokens.get(i);
            boolean fits = token.number()
                    || token.word()
                            && i == 0
                            && tokens.size() > 1
                            && tokens.get(1).glued()
                    || token.is("-", "/") && i > 0 && token.glued();
            if (!fits) {
                return "";
            }
            text.append(token.text()).append(' ');
        }
        return tokens.get(tokens.size() - 1).number() ? PlainNumber.of(text.toString()) : "";
    }
}
