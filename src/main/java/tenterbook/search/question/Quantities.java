package tenterbook.search.question;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Threshold;
import tenterbook.measure.Unit;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Measured;
import tenterbook.search.query.Span;
import tenterbook.words.Message;

/**
 * Dips, sizes, prices, weights and what a step of the recipe measures: 'six dips', 'more than ten dips', '6-8', 'over 2 m', '116 x 98',
 * 'under 100 €', 'dips 6', 'half a metre', '3 hours', 'pH 9', '40 °C', 'square'. A number alone is none; a range of small numbers, and a
 * small number with 'about', are dips.
 */
final class Quantities implements Match.Matcher {
    /** Of a number that is only 'about': a tenth, and one dip at least. */
    private static final double ABOUT = Threshold.number("question-about");
    /** What parts 'over 2 m' from 'from 2 m', in the unit of the index. */
    private static final double A_LITTLE = 0.01;
    /** A cloth whose sides differ by no more than that is called square. */
    private static final double SQUARE = 1.02;

    private final Lexicon lexicon;

    Quantities(Lexicon lexicon) {
        this.lexicon = lexicon;
    }

    @Override
    public @Nullable Match at(List<Token> tokens, int from) {
        WordTable.Found square = WordTable.SHIPPED.longest("square", tokens, from);
        if (square != null && Amount.unit(tokens, square.end()).isEmpty()) {
            Constraint alike = new Constraint.OfNumber(Map.of(Measured.RATIO, new Span(1.0, SQUARE)), false);
            return new Match(square.end(), alike, Message.of("question.square")).weighing();
        }
        QuantityReader.Typed typed = new QuantityReader(tokens, from).read();
        return typed == null ? null : match(typed);
    }

    private Match match(QuantityReader.Typed typed) {
        if (typed.what().ofStep()) {
            return new Match(
                    typed.end(),
                    new Constraint.OfFacet(Facet.STEP, steps(typed.what(), span(typed)), false),
                    label(typed));
        }
        Map<Measured, Span> spans = new EnumMap<>(Measured.class);
        if (typed.sides()) {
            spans.put(Measured.LENGTH, exactly(typed, Math.max(typed.low(), typed.high())));
            spans.put(Measured.WIDTH, exactly(typed, Math.min(typed.low(), typed.high())));
        } else {
            spans.put(typed.what(), span(typed));
        }
        return new Match(typed.end(), new Constraint.OfNumber(spans, typed.currencies(), false), label(typed));
    }

    private static Message label(QuantityReader.Typed typed) {
        Measured what = typed.sides() ? Measured.SIDE : typed.what();
        String how = typed.how().equals("between") ? "exact" : typed.how();
        Unit unit = typed.unit() == null && what == Measured.TEMPERATURE ? Unit.CELSIUS : typed.unit();
        Message measure = typed.currencies().isEmpty()
                ? Message.of("question.measure." + what.name().toLowerCase(Locale.ROOT))
                : Message.of("question.price-in", "currencies", String.join(", ", new TreeSet<>(typed.currencies())));
        return Message.of(
                "question.number",
                "what",
                measure,
                "how",
                typed.sides() ? "sides" : how,
                "low",
                NumberWords.plain(typed.low()),
                "high",
                NumberWords.plain(typed.high()),
                "united",
                unit != null
                        || typed.sides()
                        || what == Measured.SIDE
                        || what == Measured.LENGTH
                        || what == Measured.WIDTH,
                "unit",
                unit == null ? Unit.CENTIMETRE.symbol() : unit.symbol());
    }

    /** The values of steps that can lie in a range. */
    private Set<String> steps(Measured what, Span span) {
        Set<String> values = new LinkedHashSet<>();
        for (Lexicon.Name each : lexicon.all(Facet.STEP)) {
            String[] parts = each.value().split("/", -1);
            if (parts[0].equalsIgnoreCase(what.name())
                    && span.overlaps(
                            parts[1].isEmpty() ? Double.NEGATIVE_INFINITY : Double.parseDouble(parts[1]),
                            parts[2].isEmpty() ? Double.POSITIVE_INFINITY : Double.parseDouble(parts[2]))) {
                values.add(each.folded());
            }
        }
        return values;
    }

    private static Span exactly(QuantityReader.Typed typed, double side) {
        return new Span(Math.max(0, base(typed, side - typed.half())), base(typed, side + typed.half()));
    }

    private static Span span(QuantityReader.Typed typed) {
        boolean counted = typed.what() == Measured.DIPS;
        double low = base(typed, typed.low());
        double step = counted ? 1 : A_LITTLE;
        return switch (typed.how()) {
            case "over" -> new Span(Math.max(0, low + step), null);
            case "under" -> new Span(null, Math.max(0, low - step));
            case "least" -> new Span(Math.max(0, low), null);
            case "most" -> new Span(null, Math.max(0, low));
            case "about" -> about(Math.max(0, low), counted);
            case "range" -> new Span(Math.max(0, low), Math.max(0, base(typed, typed.high())));
            default ->
                counted || typed.what() == Measured.PRICE || typed.what() == Measured.DURATION
                        ? new Span(low, base(typed, typed.high()))
                        : new Span(
                                Math.max(0, base(typed, typed.low() - typed.half())),
                                Math.max(0, base(typed, typed.high() + typed.half())));
        };
    }

    private static Span about(double value, boolean counted) {
        double off = counted ? Math.max(1, Math.rint(value * ABOUT)) : value * ABOUT;
        return new Span(Math.max(0, value - off), value + off);
    }

    /** In cm, g, minutes, °C, dips or currency. */
    private static double base(QuantityReader.Typed typed, double value) {
        if (typed.unit() == null) {
            return value;
        }
        return typed.unit()
                .convert(
                        value,
                        switch (typed.unit().dimension()) {
                            case MASS -> Unit.GRAM;
                            case DURATION -> Unit.MINUTE;
                            case TEMPERATURE -> Unit.CELSIUS;
                            default -> Unit.CENTIMETRE;
                        });
    }
}
