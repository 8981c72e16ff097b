package tenterbook.search.question;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Dimension;
import tenterbook.measure.Unit;

/**
 * A number typed in digits or words, with 'a metre', 'half a metre' and 'one and a half'.
 *
 * @param half what half of the last digit typed is worth
 * @param end the first token after it
 */
record Amount(double value, double half, int end) {
    private static final double HALF = 0.5;
    /** As of '0.5'. */
    private static final double HALF_OF_TENTH = 0.05;

    private static final Map<Character, Double> FRACTIONS = Map.of('½', HALF, '¼', 0.25, '¾', 0.75);
    private static final WordTable WORDS = WordTable.SHIPPED;
    private static final List<Dimension> DIMENSIONS =
            List.of(Dimension.LENGTH, Dimension.MASS, Dimension.DURATION, Dimension.TEMPERATURE);
    /** 'A m' and 'a g' are no amounts, nor is 'a second', which is a piece of second quality. */
    private static final int SHORTEST_AFTER_A = 3;

    /** A unit that stands somewhere. */
    record OfUnit(Unit unit, int end) {}

    /** The number at a token; null where there is none. */
    static @Nullable Amount at(List<Token> tokens, int at) {
        Amount plain = plain(tokens, at);
        return plain == null ? null : andHalf(tokens, plain);
    }

    /** With 'and a half' where that follows. */
    static Amount andHalf(List<Token> tokens, Amount before) {
        WordTable.Found more = WORDS.longest("and-half", tokens, before.end());
        return more == null ? before : new Amount(before.value() + HALF, HALF_OF_TENTH, more.end());
    }

    private static @Nullable Amount plain(List<Token> tokens, int at) {
        WordTable.Found word = WORDS.longest("number", tokens, at);
        if (word != null) {
            return new Amount(Double.parseDouble(word.value()), HALF, word.end());
        }
        if (at >= tokens.size()) {
            return null;
        }
        if (tokens.get(at).number()) {
            return digits(tokens.get(at).text(), at + 1);
        }
        WordTable.Found half = WORDS.longest("half", tokens, at);
        if (half != null && unit(tokens, half.end()).isPresent()) {
            return new Amount(HALF, HALF_OF_TENTH, half.end());
        }
        if (tokens.get(at).is("a", "an") && lone(tokens, at + 1)) {
            return new Amount(1, HALF, at + 1);
        }
        Optional<OfUnit> unit = unit(tokens, at);
        return unit.isPresent()
                        && lone(tokens, at)
                        && WORDS.longest("and-half", tokens, unit.get().end()) != null
                ? new Amount(1, HALF, at)
                : null;
    }

    private static boolean lone(List<Token> tokens, int at) {
        return at < tokens.size()
                && tokens.get(at).text().length() >= SHORTEST_AFTER_A
                && unit(tokens, at).isPresent();
    }

    private static @Nullable Amount digits(String typed, int end) {
        Double more = FRACTIONS.get(typed.charAt(typed.length() - 1));
        String digits = more == null ? typed : typed.substring(0, typed.length() - 1);
        digits = digits.matches("\\d{1,3}(,\\d{3})+") ? digits.replace(",", "") : digits.replace(',', '.');
        // More digits than any amount has are no number, so that no search is refused for them.
        if (!digits.matches("\\d{1,9}(\\.\\d+)?")) {
            return null;
        }
        int point = digits.indexOf('.');
        double half = more != null ? HALF_OF_TENTH : HALF * Math.pow(10, point < 0 ? 0 : point + 1 - digits.length());
        return new Amount(Double.parseDouble(digits) + (more == null ? 0 : more), half, end);
    }

    /** The unit that begins at a token. */
    static Optional<OfUnit> unit(List<Token> tokens, int at) {
        if (at >= tokens.size() || tokens.get(at).kind() == Token.Kind.QUOTED) {
            return Optional.empty();
        }
        WordTable.Found named = WORDS.longest("unit", tokens, at);
        String written = named == null ? tokens.get(at).text() : named.value();
        int end = named == null ? at + 1 : named.end();
        return DIMENSIONS.stream()
                .flatMap(dimension -> Unit.written(written, dimension).stream())
                .filter(unit -> unit != Unit.SECOND && unit != Unit.NIGHT)
                .map(unit -> new OfUnit(unit, end))
                .findFirst();
    }
}
