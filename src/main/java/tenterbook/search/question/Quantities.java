package tenterbook.search.question;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.measure.Dimension;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Unit;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Measured;
import tenterbook.search.query.Span;
import tenterbook.words.Message;

/**
 * Dips, sizes, prices and weights: 'six dips', 'more than ten dips', '6-8', 'over 2 m', '116 x 98', 'under 100 €', 'dips 6'. A number
 * alone is none; a range of small numbers, and a small number with 'about', are dips.
 */
final class Quantities implements Match.Matcher {
    /** Nobody dips so often, and no price is so small: where no unit stands, it parts the two. */
    private static final double MOST_DIPS = 60;
    /** Of a number that is only 'about': a tenth, and one dip at least. */
    private static final double ABOUT = 0.1;
    /** What parts 'over 2 m' from 'from 2 m', in cm, g or currency. */
    private static final double A_LITTLE = 0.01;

    private final WordTable words = WordTable.SHIPPED;

    /** Numbers with how they are meant, being read from left to right. */
    private final class Reader {
        private final List<Token> tokens;
        private int at;
        private String how = "exact";
        private boolean howTyped;
        private Measured what;
        private Unit unit;
        private boolean priced;
        private double low;
        private double high;
        /** What half of the last digit typed is worth, in the unit typed. */
        private double half;

        private boolean sides;

        Reader(List<Token> tokens, int from) {
            this.tokens = tokens;
            this.at = from;
        }

        Match read() {
            noun("measure");
            Measured noun = what;
            comparison();
            priced = word("currency");
            if (!number()) {
                return null;
            }
            second();
            ish();
            behind();
            unit();
            behind();
            if (what == null && !priced && unit == null) {
                guess(noun);
            }
            if (what == null && (unit != null || priced)) {
                what = priced ? Measured.PRICE : unit.dimension() == Dimension.MASS ? Measured.MASS : Measured.SIDE;
            }
            if (what == null || !fits()) {
                return null;
            }
            return match();
        }

        private boolean fits() {
            Dimension dimension = unit == null ? null : unit.dimension();
            return switch (what) {
                case DIPS, PRICE -> unit == null;
                case MASS -> dimension == null || dimension == Dimension.MASS;
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

        private boolean word(String kind) {
            WordTable.Found found = words.longest(kind, tokens, at);
            at = found == null ? at : found.end();
            return found != null;
        }

        private void comparison() {
            WordTable.Found found = words.longest("how", tokens, at);
            if (found != null) {
                how = found.value();
                howTyped = true;
                at = found.end();
            }
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
        private Double value() {
            WordTable.Found word = words.longest("number", tokens, at);
            if (word != null) {
                at = word.end();
                half = 0.5;
                return Double.valueOf(word.value());
            }
            if (at >= tokens.size() || !tokens.get(at).number()) {
                return null;
            }
            String digits = tokens.get(at++).text();
            digits = digits.matches("\\d{1,3}(,\\d{3})+") ? digits.replace(",", "") : digits.replace(',', '.');
            int point = digits.indexOf('.');
            half = 0.5 * Math.pow(10, point < 0 ? 0 : point + 1 - digits.length());
            // More digits than any amount has are no number, so that no search is refused for them.
            return digits.matches("\\d{1,9}(\\.\\d+)?") ? Double.valueOf(digits) : null;
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
            int next = at + 1;
            boolean more = next + 1 < tokens.size()
                    && tokens.get(next).is("x", "×", "by", "por", "-", "to", "a", "or", "and", "e")
                    && tokens.get(next + 1).number();
            String text = tokens.get(at).text();
            if (more && (Unit.written(text, Dimension.LENGTH).isPresent() || words.has("currency", tokens.get(at)))) {
                at = next;
            }
        }

        private void ish() {
            if (at < tokens.size() && tokens.get(at).is("ish") && tokens.get(at).glued()) {
                at++;
                how = "about";
            }
        }

        /** 'or less', 'or more' behind the number. */
        private void behind() {
            WordTable.Found found = words.longest("behind", tokens, at);
            if (found != null) {
                how = found.value();
                howTyped = true;
                at = found.end();
            }
        }

        private void unit() {
            if (at >= tokens.size()) {
                return;
            }
            if (word("currency")) {
                priced = true;
                return;
            }
            WordTable.Found named = words.longest("unit", tokens, at);
            String written = named == null ? tokens.get(at).text() : named.value();
            Optional<Unit> found =
                    Unit.written(written, Dimension.LENGTH).or(() -> Unit.written(written, Dimension.MASS));
            if (found.isPresent()) {
                unit = found.get();
                at = named == null ? at + 1 : named.end();
                if (unit.dimension() == Dimension.LENGTH) {
                    noun("side");
                }
            } else if (what == null) {
                noun("measure");
                what = what == Measured.DIPS ? what : null;
                at = what == null ? at : afterMore("measure");
            }
        }

        /** Past 'in the vat' after 'dipped' and the like. */
        private int afterMore(String kind) {
            WordTable.Found more = words.longest(kind, tokens, at);
            return more != null && measured(more.value()) == what ? more.end() : at;
        }

        /** Of numbers without a unit. */
        private void guess(Measured noun) {
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

        private Match match() {
            Map<Measured, Span> spans = new EnumMap<>(Measured.class);
            if (sides) {
                spans.put(Measured.LENGTH, span(Math.max(low, high), Math.max(low, high), "exact"));
                spans.put(Measured.WIDTH, span(Math.min(low, high), Math.min(low, high), "exact"));
            } else {
                spans.put(what, span(low, high, how));
            }
            Message label = Message.of(
                    "question.number",
                    "what",
                    Message.of("question.measure."
                            + (sides ? Measured.SIDE : what).name().toLowerCase(Locale.ROOT)),
                    "how",
                    sides ? "sides" : how.equals("between") ? "exact" : how,
                    "low",
                    NumberWords.plain(low),
                    "high",
                    NumberWords.plain(high),
                    "united",
                    unit != null || sides || what == Measured.SIDE,
                    "unit",
                    unit == null ? Unit.CENTIMETRE.symbol() : unit.symbol());
            return new Match(at, new Constraint.OfNumber(spans, false), label);
        }

        private Span span(double from, double to, String meant) {
            boolean counted = what == Measured.DIPS;
            double step = counted ? 1 : A_LITTLE;
            double slack = counted || what == Measured.PRICE ? 0 : half;
            return switch (meant) {
                case "over" -> new Span(base(from) + step, null);
                case "under" -> new Span(null, Math.max(0, base(from) - step));
                case "least" -> new Span(base(from), null);
                case "most" -> new Span(null, base(from));
                case "about" -> about(base(from), counted);
                case "range" -> new Span(base(from), base(to));
                default -> new Span(Math.max(0, base(from - slack)), base(to + slack));
            };
        }

        private Span about(double value, boolean counted) {
            double off = counted ? Math.max(1, Math.rint(value * ABOUT)) : value * ABOUT;
            return new Span(Math.max(0, value - off), value + off);
        }

        /** In cm, g, dips or currency. */
        private double base(double value) {
            if (unit == null) {
                return value;
            }
            return unit.convert(value, unit.dimension() == Dimension.MASS ? Unit.GRAM : Unit.CENTIMETRE);
        }
    }

    private static Measured measured(String word) {
        return Measured.valueOf(word.toUpperCase(Locale.ROOT));
    }

    @Override
    public Match at(List<Token> tokens, int from) {
        return new Reader(tokens, from).read();
    }
}
