package tenterbook.recipe;

import java.time.Duration;
import java.util.List;
import tenterbook.measure.Unit;
import tenterbook.recipe.dip.DipTally;

/** Figures of one dip series: how many dips, how long in the vat, how long between dips. Times in minutes. */
record DipFigures(Figure count, Figure contact, Figure airing) {
    private static final double SECONDS_IN_A_MINUTE = 60;

    static DipFigures of(DipSeries series) {
        return new DipFigures(counted(series), contact(series), airing(series));
    }

    /** By the rule of {@link DipTally}. */
    private static Figure counted(DipSeries series) {
        DipTally tally = series.tally();
        int timed = series.dips().size();
        Figure figure;
        if (tally.timed()) {
            Working working = new Working("dips", "timed dips, counted");
            working.note("timed dips", String.valueOf(timed));
            figure = working.gives(() -> Span.exactly(timed), Unit.COUNT);
        } else {
            Working working = new Working("dips", "as counted");
            Span count = working.take("number of dips", series.count(), Unit.COUNT);
            figure = working.gives(() -> count, Unit.COUNT);
        }
        return new Figure(
                figure.name(),
                figure.value(),
                figure.formula(),
                figure.inputs(),
                String.join(" ", tally.disagreements()),
                figure.refusal());
    }

    private static Figure contact(DipSeries series) {
        Working product = new Working("time in the vat", "number of dips × time of each");
        Span count = product.take("number of dips", series.count(), Unit.COUNT);
        Span each = product.take("time of each dip", series.each(), Unit.MINUTE);
        Figure told = product.gives(() -> count.times(each), Unit.MINUTE);
        if (series.dips().isEmpty()) {
            return told;
        }
        Working working = new Working("time in the vat", "sum of (out − in) over the timed dips");
        List<Dip> dips = checked(series, working);
        Figure timed = working.gives(
                () -> Span.exactly(dips.stream()
                        .mapToDouble(dip -> minutes(Duration.between(dip.in(), dip.out())))
                        .sum()),
                Unit.MINUTE);
        if (timed.refused() || told.refused()) {
            return timed;
        }
        Figure both = Working.wins(told, timed.value(), "timed", Unit.MINUTE);
        return new Figure(
                timed.name(), timed.value(), timed.formula(), timed.inputs(), both.disagreement(), timed.refusal());
    }

    private static Figure airing(DipSeries series) {
        if (series.dips().isEmpty()) {
            Working working = new Working("airing", "(number of dips − 1) × time between two dips");
            Span count = working.take("number of dips", series.count(), Unit.COUNT);
            Span each = working.take("time between two dips", series.airing(), Unit.MINUTE);
            return working.gives(() -> count.lessOne().times(each), Unit.MINUTE);
        }
        Working working = new Working("airing", "sum of (next in − out) over the timed dips");
        List<Dip> dips = checked(series, working);
        return working.gives(
                () -> {
                    double sum = 0;
                    for (int i = 1; i < dips.size(); i++) {
                        sum += minutes(Duration.between(
                                dips.get(i - 1).out(), dips.get(i).in()));
                    }
                    return Span.exactly(sum);
                },
                Unit.MINUTE);
    }

    /** The timed dips; what keeps them from being summed is noted. */
    private static List<Dip> checked(DipSeries series, Working working) {
        for (int i = 0; i < series.dips().size(); i++) {
            Dip dip = series.dips().get(i);
            working.note("dip " + (i + 1), "in %s, out %s".formatted(said(dip.in()), said(dip.out())));
            if (dip.in() == null || dip.out() == null) {
                working.missing("dip " + (i + 1) + " lacks the time it went "
                        + (dip.in() == null ? dip.out() == null ? "in and came out" : "in" : "out"));
            } else if (i > 0
                    && series.dips().get(i - 1).out() != null
                    && dip.in().isBefore(series.dips().get(i - 1).out())) {
                working.missing("dip " + (i + 1) + " begins before dip " + i + " is out");
            }
        }
        return series.dips();
    }

    private static String said(Object time) {
        return time == null ? "not recorded" : time.toString().replace('T', ' ');
    }

    private static double minutes(Duration duration) {
        return duration.toSeconds() / SECONDS_IN_A_MINUTE;
    }
}
