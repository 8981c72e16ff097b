package tenterbook.exchange.backup;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.IsoFields;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which generations of a backup's ledger are kept: the last 7, the last of each week (ISO 8601, UTC) for 8 weeks, and the last of
 * each month for ever.
 */
final class BackupRule {
    static final int LAST = 7;
    static final int WEEKS = 8;

    private BackupRule() {}

    static Set<Instant> kept(Collection<Instant> made, Instant now) {
        List<Instant> newestFirst = List.copyOf(new TreeSet<>(made).descendingSet());
        Set<Instant> kept = new HashSet<>(newestFirst.subList(0, Math.min(LAST, newestFirst.size())));
        Set<String> weeks = new HashSet<>();
        Set<YearMonth> months = new HashSet<>();
        LocalDate oldestWeek = day(now).minusWeeks(WEEKS);
        for (Instant each : newestFirst) {
            LocalDate day = day(each);
            String week = day.get(IsoFields.WEEK_BASED_YEAR) + "-" + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
            boolean lastOfWeek = weeks.add(week) && day.isAfter(oldestWeek);
            boolean lastOfMonth = months.add(YearMonth.from(day));
            if (lastOfWeek || lastOfMonth) {
                kept.add(each);
            }
        }
        return kept;
    }

    private static LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC);
    }
}
