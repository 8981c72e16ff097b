package tenterbook.search.question;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Dimension;
import tenterbook.measure.Unit;
import tenterbook.search.query.Measured;

/** Numbers with how they are meant, being read from left to right. */
final class QuantityReader {
    /** Nobody dips so often, and no price is so small: where no unit stands, it parts the two. */
    private static final double MOST_DIPS = 60;

    private static final double MINUTES_OF_HOUR = 60;

    private final WordTable words = WordTable.SHIPPED;
    private final List<Token> tokens;
    private int at;
    private String how = "exact";
    private boolean howTyped;
    /** What the comparison is of, as the width in 'wider than'; null where that is open. */
    private @Nullable Measured compared;

    private @Nullable Measured what;
    private @Nullable Unit unit;
    private Set<String> currencies = Set.of();
    private double low;
    private double high;
    private double half;
    private boolean sides;

    QuantityReader(List<Token> tokens, int from) {
        this.tokens = tokens;
        this.at = from;
    }

    /**
     * What was read.
     *
     * @param end the first token after it
     * @param how 'over', 'under', 'least', 'most', 'about', 'range', 'between' or 'exact'
     * @param low the number, or the lower of two, in the unit
     * @param half what half of the last digit typed is worth, in the unit
     * @param sides whether the two numbers are the sides of a cloth
     * @param unit null where none was typed
     * @param currencies of a price, as three letters; empty for any
     */
    record Typed(
            int end,
            Measured what,
            String how,
            double low,
            double high,
            double half,
            boolean sides,
            @Nullable Unit unit,
            Set<String> currencies) {}

    /** The quantity that begins where reading begins; null where none does. */
    @Nullable
    Typed read() {
        noun("measure");
        Measured noun = what;
        comparison();
        currency();
        if (!number()) {
            return null;
        }
        second();
        ish();
        behind();
        unit();
        behind();
        boolean priced = !currencies.isEmpty();
        if (what == null && !priced && unit == null) {
            guess(noun == null ? compared : noun);
        }
        if (what == null && (unit != null || priced)) {
            what = priced ? Measured.PRICE : of(unit.dimension());
        }
        return what == null || !fits() ? null : new Typed(at, what, how, low, high, half, sides, unit, currencies);
    }

    private Measured of(Dimension dimension) {
        return switch (dimension) {
            case MASS -> Measured.MASS;
            case DURATION -> Measured.DURATION;
            case TEMPERATURE -> Measured.TEMPERATURE;
            default -> compared == Measured.LENGTH || compared == Measured.WIDTH ? compared : Measured.SIDE;
        };
    }

    private boolean fits() {
        Dimension dimension = unit == null ? null : unit.dimension();
        return switch (what) {
            case DIPS, PRICE, PH, RATIO -> unit == null;
            case MASS -> dimension == null || dimension == Dimension.MASS;
            case DURATION -> dimension == Dimension.DURATION;
            case TEMPERATURE -> dimension == null || dimension == Dimension.TEMPERATURE;
            default -> dimension == null || dimension == Dimension.LENGTH;
        };
    }

    private void noun(String kind) {
        WordTable.Found noun = words.longest(kind, tokens, at);
        if (noun != null) {
            what = measured(noun.value());
            at = noun.end();
        }
    }

    private boolean currency() {
        WordTable.Found found = words.longest("currency", tokens, at);
        if (found == null) {
            return false;
        }
        currencies = WordTable.words(found.value());
        at = found.end();
        return true;
    }

    private void comparison() {
        WordTable.Found found = words.longest("how", tokens, at);
        if (found != null) {
            compares(found);
        }
    }

    /** 'or less', 'or more' behind the number. */
    private void behind() {
        WordTable.Found found = words.longest("behind", tokens, at);
        if (found != null) {
            compares(found);
        }
    }

    private void compares(WordTable.Found found) {
        String[] parts = found.value().split(" ");
        how = parts[0];
        compared = parts.length > 1 ? measured(parts[1]) : compared;
        howTyped = true;
        at = found.end();
    }

    private boolean number() {
        Double value = value();
        if (value == null) {
            return false;
        }
        low = value;
        high = value;
        return true;
    }

    /** The number at hand, gone past; null where there is none. */
    private @Nullable Double value() {
        Amount amount = Amount.at(tokens, at);
        if (amount == null) {
            return null;
        }
        at = amount.end();
        half = amount.half();
        return amount.value();
    }

    /** The other end of a range, or the other side of a cloth. */
    private void second() {
        int before = at;
        if (at >= tokens.size()) {
            return;
        }
        if (tokens.get(at).is("+")) {
            at++;
            how = "least";
            return;
        }
        unitBefore();
        boolean range = tokens.get(at).is("-", "..", "to", "a", "ate", "or", "ou")
                || how.equals("between") && tokens.get(at).is("and", "e");
        boolean across = tokens.get(at).is("x", "×", "by", "por");
        if (range || across) {
            at++;
            Double value = value();
            if (value != null && (across || value >= low)) {
                high = value;
                sides = across;
                how = sides ? how : "range";
                return;
            }
        }
        at = before;
    }

    /** Past the unit of the first number where a second follows, as in '120 cm x 60 cm'. */
    private void unitBefore() {
        Optional<Amount.OfUnit> found = Amount.unit(tokens, at);
        int next = found.isPresent() ? found.get().end() : at + 1;
        boolean more = next + 1 < tokens.size()
                && tokens.get(next).is("x", "×", "by", "por", "-", "to", "a", "or", "and", "e")
                && tokens.get(next + 1).number();
        if (more && (found.isPresent() || words.has("currency", tokens.get(at)))) {
            at = next;
        }
    }

    private void ish() {
        if (at < tokens.size() && tokens.get(at).is("ish") && tokens.get(at).glued()) {
            at++;
            how = "about";
        }
    }

    private void unit() {
        if (at >= tokens.size() || currency()) {
            return;
        }
        Optional<Amount.OfUnit> found = Amount.unit(tokens, at);
        if (found.isPresent()) {
            unit = found.get().unit();
            Amount whole =
                    Amount.andHalf(tokens, new Amount(low, half, found.get().end()));
            high = high == low ? whole.value() : high;
            low = whole.value();
            half = whole.half();
            at = whole.end();
            minutes();
            if (unit.dimension() == Dimension.LENGTH) {
                noun("side");
            }
        } else if (what == null) {
            noun("measure");
            what = what == Measured.DIPS || what == Measured.PH ? what : null;
            at = what == null ? at : afterMore("measure");
        }
    }

    /** The minutes in '1 h 30 min'. */
    private void minutes() {
        Amount more = unit == Unit.HOUR && high == low ? Amount.at(tokens, at) : null;
        Optional<Amount.OfUnit> its = more == null ? Optional.empty() : Amount.unit(tokens, more.end());
        if (its.isPresent() && its.get().unit() == Unit.MINUTE) {
            unit = Unit.MINUTE;
            low = low * MINUTES_OF_HOUR + more.value();
            high = low;
            at = its.get().end();
        }
    }

    /** Past 'in the vat' after 'dipped' and the like. */
    private int afterMore(String kind) {
        WordTable.Found more = words.longest(kind, tokens, at);
        return more != null && measured(more.value()) == what ? more.end() : at;
    }

    /** Of numbers without a unit. */
    private void guess(@Nullable Measured noun) {
        boolean small = high <= MOST_DIPS && low == Math.rint(low) && high == Math.rint(high);
        if (noun != null) {
            what = noun;
        } else if (sides) {
            what = Measured.SIDE;
        } else if (how.equals("range") || how.equals("about")) {
            what = small ? Measured.DIPS : sized() ? Measured.PRICE : null;
        } else if (howTyped && !how.equals("between") && !small && !Times.year(low)) {
            what = Measured.PRICE;
        }
    }

    /** Whether a range may be of prices and not of years. */
    private boolean sized() {
        return how.equals("range") && !Times.year(low) && !Times.year(high);
    }

    private static Measured measured(String word) {
        return Measured.valueOf(word.toUpperCase(Locale.ROOT));
    }
}
