package tenterbook.web.exchange;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.Verdict;

/**
 * A page of the verdicts of an import.
 *
 * @param shown the verdict of the rows shown; null for all
 * @param matching how many rows there are to be shown
 */
public record RowsView(
        List<Line> lines,
        Map<Verdict, Integer> counts,
        @Nullable Verdict shown,
        int page,
        int matching,
        int total) {
    public static final int SIZE = 100;

    /** The verdict of one row. */
    public record Line(String row, Verdict verdict, String id, String why) {}

    static RowsView read(Path file, @Nullable String show, @Nullable String pageTyped) throws IOException {
        Verdict shown = null;
        for (Verdict each : Verdict.values()) {
            shown = each.toString().equals(show) ? each : shown;
        }
        int page = pageTyped != null && pageTyped.matches("\\d{1,6}") ? Math.max(1, Integer.parseInt(pageTyped)) : 1;
        Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
        List<Line> lines = new ArrayList<>();
        int matching = 0;
        int total = 0;
        try (BufferedReader in = Files.newBufferedReader(file)) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String[] part = line.split("\t", 4);
                Verdict verdict = verdict(part[1]);
                counts.merge(verdict, 1, Integer::sum);
                total++;
                if (shown == null || shown == verdict) {
                    matching++;
                    if (matching > (page - 1) * SIZE && lines.size() < SIZE) {
                        lines.add(new Line(part[0], verdict, part[2], part[3]));
                    }
                }
            }
        }
        return new RowsView(lines, counts, shown, page, matching, total);
    }

    private static Verdict verdict(String word) {
        for (Verdict each : Verdict.values()) {
            if (each.toString().equals(word)) {
                return each;
            }
        }
        throw new IllegalStateException("No verdict: " + word);
    }

    public int pages() {
        return Math.max(1, (matching + SIZE - 1) / SIZE);
    }

    /** Every kind of sheet, for a choice. */
    public static List<SheetKind> kinds() {
        return List.of(SheetKind.values());
    }
}
