package tenterbook.recipe;

import java.time.Duration;
import java.util.List;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Unit;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Message;

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
            Working working = new Working(Message.of("recipe.figure.dips"), Message.of("recipe.figure.timed-counted"));
            working.note(Message.of("recipe.figure.timed-dips"), NumberWords.plain(timed));
            figure = working.gives(() -> Span.exactly(timed), Unit.COUNT);
        } else {
            Working working = new Working(Message.of("recipe.figure.dips"), Message.of("recipe.figure.as-counted"));
            Span count = working.take(Message.of("recipe.figure.number-of-dips"), series.count(), Unit.COUNT);
            figure = working.gives(() -> count, Unit.COUNT);
        }
        return new Figure(
                figure.name(),
                figure.value(),
                figure.formula(),
                figure.inputs(),
                tally.disagreements(),
                figure.missing());
    }

    private static Figure contact(DipSeries series) {
        Working product = new Working(Message.of("recipe.figure.contact"), Message.of("recipe.figure.contact-formula"));
        Span count = product.take(Message.of("recipe.figure.number-of-dips"), series.count(), Unit.COUNT);
        Span each = product.take(Message.of("recipe.figure.each-dip"), series.each(), Unit.MINUTE);
        Figure multiplied = product.gives(() -> count.times(each), Unit.MINUTE);
        if (series.dips().isEmpty()) {
            return multiplied;
        }
        Working working = new Working(Message.of("recipe.figure.contact"), Message.of("recipe.figure.contact-timed"));
        List<Dip> dips = checked(series, working);
        Figure timed = working.gives(
                () -> Span.exactly(dips.stream()
                        .mapToDouble(dip -> minutes(Duration.between(dip.in(), dip.out())))
                        .sum()),
                Unit.MINUTE);
        if (timed.refused() || multiplied.refused()) {
            return timed;
        }
        Figure both = Working.wins(multiplied, timed.value(), "timed", Unit.MINUTE);
        return new Figure(
                timed.name(), timed.value(), timed.formula(), timed.inputs(), both.disagreements(), timed.missing());
    }

    private static Figure airing(DipSeries series) {
        if (series.dips().isEmpty()) {
            Working working =
                    new Working(Message.of("recipe.figure.airing"), Message.of("recipe.figure.airing-formula"));
            Span count = working.take(Message.of("recipe.figure.number-of-dips"), series.count(), Unit.COUNT);
            Span each = working.take(Message.of("recipe.figure.between-dips"), series.airing(), Unit.MINUTE);
            return working.gives(() -> count.lessOne().times(each), Unit.MINUTE);
        }
        Working working = new Working(Message.of("recipe.figure.airing"), Message.of("recipe.figure.airing-timed"));
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

    /** The timed dips; a reason why they cannot be summed is noted in {@code working}. */
    private static List<Dip> checked(DipSeries series, Working working) {
        for (int i = 0; i < series.dips().size(); i++) {
            Dip dip = series.dips().get(i);
            working.note(
                    Message.of("recipe.figure.dip", "number", i + 1),
                    Message.of("recipe.figure.dip-times", "in", orUnknown(dip.in()), "out", orUnknown(dip.out())));
            if (dip.in() == null || dip.out() == null) {
                working.missing(Message.of("recipe.figure.dip-without-time", "number", i + 1, "lacks", lacking(dip)));
            } else if (i > 0
                    && series.dips().get(i - 1).out() != null
                    && dip.in().isBefore(series.dips().get(i - 1).out())) {
                working.missing(Message.of("recipe.figure.dip-too-early", "number", i + 1, "before", i));
            }
        }
        return series.dips();
    }

    private static String lacking(Dip dip) {
        if (dip.in() == null && dip.out() == null) {
            return "both";
        }
        return dip.in() == null ? "in" : "out";
    }

    private static Object orUnknown(Object time) {
        return time == null
                ? Message.of("measure.not-recorded")
                : time.toString().replace('T', ' ');
    }

    private static double minutes(Duration duration) {
        return duration.toSeconds() / SECONDS_IN_A_MINUTE;
    }
}
