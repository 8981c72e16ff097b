package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.PieceFacts;
import tenterbook.piece.Piece;
import tenterbook.search.find.FoundNumbers;
import tenterbook.search.query.PieceQuery;
import tenterbook.web.Site;
import tenterbook.web.found.PlotQuantity.Extent;

/**
 * Two quantities of the pieces found, as points in a field {@value #WIDE} wide and {@value #HIGH} high; a range is a bar through its
 * point, from edge to edge where an end is open.
 *
 * @param points of the first {@value #MOST} pieces that have both values
 * @param across ticks along x
 * @param up ticks along y
 * @param xTitle with its unit
 * @param yTitle with its unit
 * @param shown pieces looked at, of {@code total} found
 * @param lacking sentences that count the pieces not drawn and state why
 */
public record FoundPlot(
        List<Point> points,
        List<Mark> across,
        List<Mark> up,
        String xTitle,
        String yTitle,
        int shown,
        long total,
        List<String> lacking) {
    /** More points cannot be told apart on a page, and a page of more is slow. */
    public static final int MOST = 1500;

    public static final int WIDE = 100;
    public static final int HIGH = 62;

    /** A number beside an axis, at a distance along it in units of the drawing. */
    public record Mark(String at, String label) {}

    /**
     * @param bars SVG path of the ranges; empty where both values are exact
     * @param fill the main colour of the piece as {@code #rrggbb}; empty where none is known
     */
    public record Point(
            String number, String title, String x, String y, String bars, String fill, String xText, String yText) {}

    /** A piece that has both values. */
    private record Placed(PieceFacts facts, Extent x, Extent y) {}

    static FoundPlot of(Site site, PieceQuery query, ViewChoice choice) {
        FoundNumbers found = site.index().numbers(query, MOST);
        Counting counting = new Counting();
        List<Placed> placed = new ArrayList<>();
        Currency currency =
                site.archive().readableStudio().map(studio -> studio.currency()).orElse(null);
        new Subjects(site)
                .each(
                        found.numbers(),
                        List.of(),
                        subject -> place(subject.facts(), choice, currency, counting)
                                .ifPresent(placed::add));
        Axis x = axis(choice.x(), placed, Placed::x);
        Axis y = axis(choice.y(), placed, Placed::y);
        return new FoundPlot(
                placed.stream().map(each -> point(each, x, y)).toList(),
                x.ticks().stream()
                        .map(tick -> new Mark(unit(x.along(tick.at()) * WIDE), tick.label()))
                        .toList(),
                y.ticks().stream()
                        .map(tick -> new Mark(unit(HIGH - y.along(tick.at()) * HIGH), tick.label()))
                        .toList(),
                choice.x().titled(currency),
                choice.y().titled(currency),
                found.numbers().size(),
                found.total(),
                counting.sentences(currency));
    }

    private static Optional<Placed> place(
            PieceFacts facts, ViewChoice choice, @Nullable Currency currency, Counting counting) {
        boolean price = choice.x() == PlotQuantity.PRICE || choice.y() == PlotQuantity.PRICE;
        if (price && elsewhere(facts.piece(), currency)) {
            counting.otherCurrency++;
            return Optional.empty();
        }
        Optional<Extent> x = choice.x().of(facts);
        Optional<Extent> y = choice.y().of(facts);
        if (x.isPresent() && y.isPresent()) {
            return Optional.of(new Placed(facts, x.get(), y.get()));
        }
        counting.notDrawn++;
        if (x.isEmpty()) {
            counting.lacking.merge(choice.x(), 1, Integer::sum);
        }
        if (y.isEmpty() && choice.y() != choice.x()) {
            counting.lacking.merge(choice.y(), 1, Integer::sum);
        }
        return Optional.empty();
    }

    /** Amounts in several currencies have no common axis, and nothing is converted. */
    private static boolean elsewhere(Piece piece, @Nullable Currency currency) {
        return piece.price() != null && !piece.price().currency().equals(currency);
    }

    private static final class Counting {
        private final Map<PlotQuantity, Integer> lacking = new LinkedHashMap<>();
        private int notDrawn;
        private int otherCurrency;

        List<String> sentences(@Nullable Currency currency) {
            List<String> sentences = new ArrayList<>();
            if (notDrawn > 0) {
                String each = lacking.entrySet().stream()
                        .map(entry -> w("found.lacking", "what", entry.getKey().label(), "count", entry.getValue()))
                        .collect(Collectors.joining(", "));
                sentences.add(w("found.not-drawn", "count", notDrawn, "lacking", each));
            }
            if (otherCurrency > 0) {
                sentences.add(w(
                        "found.other-currency",
                        "count",
                        otherCurrency,
                        "currency",
                        currency == null ? "" : currency.getCurrencyCode()));
            }
            return sentences;
        }
    }

    private static Axis axis(PlotQuantity quantity, List<Placed> placed, Function<Placed, Extent> of) {
        if (quantity == PlotQuantity.LIGHTNESS) {
            return Axis.ofNumbers(0, 100);
        }
        double low = ends(placed, of).min().orElse(0);
        double high = ends(placed, of).max().orElse(1);
        return quantity.ofDays() ? Axis.ofDays(low, high) : Axis.ofNumbers(low, high);
    }

    /** Every end that is known. */
    private static DoubleStream ends(List<Placed> placed, Function<Placed, Extent> of) {
        return placed.stream()
                .map(of)
                .flatMapToDouble(each -> DoubleStream.of(each.low(), each.high()))
                .filter(Double::isFinite);
    }

    private static Point point(Placed placed, Axis x, Axis y) {
        double across = x.along(middle(placed.x)) * WIDE;
        double down = HIGH - y.along(middle(placed.y)) * HIGH;
        StringBuilder bars = new StringBuilder();
        if (placed.x.range()) {
            bars.append("M%s %sH%s"
                    .formatted(
                            unit(x.along(placed.x.low()) * WIDE), unit(down), unit(x.along(placed.x.high()) * WIDE)));
        }
        if (placed.y.range()) {
            bars.append("M%s %sV%s"
                    .formatted(
                            unit(across),
                            unit(HIGH - y.along(placed.y.low()) * HIGH),
                            unit(HIGH - y.along(placed.y.high()) * HIGH)));
        }
        Piece piece = placed.facts.piece();
        return new Point(
                piece.number().value(),
                piece.title(),
                unit(across),
                unit(down),
                bars.toString(),
                placed.facts
                        .colours()
                        .main()
                        .map(colour -> colour.colour().srgb().hex())
                        .orElse(""),
                w(placed.x.text()),
                w(placed.y.text()));
    }

    /** The known end where the other is open. */
    private static double middle(Extent extent) {
        if (Double.isInfinite(extent.low())) {
            return extent.high();
        }
        return Double.isInfinite(extent.high()) ? extent.low() : (extent.low() + extent.high()) / 2;
    }

    private static String unit(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
