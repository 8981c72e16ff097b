package tenterbook.web.found;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import tenterbook.measure.NumberWords;
import tenterbook.web.page.Words;

/**
 * An axis of a plot.
 *
 * @param least value at its beginning
 * @param most value at its end, greater
 * @param ticks numbers beside it, rising
 */
record Axis(double least, double most, List<Tick> ticks) {
    /** Steps along an axis; the ends may add one more. */
    private static final int USUAL_TICKS = 6;

    private static final int[] MONTHS = {1, 3, 6, 12, 24, 60, 120, 240, 600, 1200};
    private static final int[] DAYS = {1, 2, 7, 14};

    record Tick(double at, String label) {}

    /** Part of the axis's length, 0 to 1; what lies beyond an end is drawn at it. */
    double along(double value) {
        return Math.max(0, Math.min(1, (value - least) / (most - least)));
    }

    /** Steps of 1, 2 or 5 times a power of ten; from zero where that costs less than half of the length. */
    static Axis ofNumbers(double low, double high) {
        double begin = low >= 0 && low <= 0.6 * high ? 0 : low;
        double end = high > begin ? high : begin + 1;
        double step = step((end - begin) / USUAL_TICKS);
        double least = Math.floor(begin / step + 1e-9) * step;
        double most = Math.ceil(end / step - 1e-9) * step;
        List<Tick> ticks = new ArrayList<>();
        for (int i = 0; least + i * step <= most + step * 1e-6; i++) {
            double at = least + i * step;
            ticks.add(new Tick(at, Words.w(NumberWords.rounded(Math.round(at / step) * step))));
        }
        return new Axis(least, most, ticks);
    }

    private static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (int times : new int[] {1, 2, 5}) {
            if (times * power >= least * (1 - 1e-9)) {
                return times * power;
            }
        }
        return 10 * power;
    }

    /** Whole days, months or years, named as dates are written in the archive. */
    static Axis ofDays(double low, double high) {
        LocalDate first = LocalDate.ofEpochDay((long) low);
        LocalDate last = LocalDate.ofEpochDay((long) high);
        long days = ChronoUnit.DAYS.between(first, last);
        List<Tick> ticks = new ArrayList<>();
        if (days <= DAYS[DAYS.length - 1] * USUAL_TICKS) {
            int step = fitting(DAYS, days);
            for (LocalDate day = first; ; day = day.plusDays(step)) {
                ticks.add(tick(day, day.toString()));
                if (!day.isBefore(last)) {
                    break;
                }
            }
        } else {
            months(first, last, ticks);
        }
        double begin = ticks.get(0).at();
        return new Axis(begin, Math.max(begin + 1, ticks.get(ticks.size() - 1).at()), ticks);
    }

    private static void months(LocalDate first, LocalDate last, List<Tick> ticks) {
        long months = ChronoUnit.MONTHS.between(first, last) + 1;
        int step = fitting(MONTHS, months);
        long index = first.getYear() * 12L + first.getMonthValue() - 1;
        index -= Math.floorMod(index, step);
        for (LocalDate at = month(index); ; at = at.plusMonths(step)) {
            ticks.add(tick(
                    at,
                    step >= 12
                            ? Integer.toString(at.getYear())
                            : YearMonth.from(at).toString()));
            if (!at.isBefore(last)) {
                break;
            }
        }
    }

    /** The smallest step that does not make too many ticks. */
    private static int fitting(int[] steps, long length) {
        for (int step : steps) {
            if (length <= (long) step * USUAL_TICKS) {
                return step;
            }
        }
        return steps[steps.length - 1];
    }

    private static LocalDate month(long index) {
        return LocalDate.of((int) Math.floorDiv(index, 12L), (int) Math.floorMod(index, 12L) + 1, 1);
    }

    private static Tick tick(LocalDate day, String label) {
        return new Tick(day.toEpochDay(), label);
    }
}
