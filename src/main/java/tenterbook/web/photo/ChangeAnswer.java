package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import tenterbook.web.photo.FadingPages.FadingRow;

/** The one sentence that answers whether a piece has changed, from what its parts show. */
final class ChangeAnswer {
    private ChangeAnswer() {}

    /** @param calibrated whether both photographs are; without, a change of light cannot be told from one of the cloth */
    static String of(List<FadingRow> rows, boolean calibrated) {
        List<String> changed = rows.stream()
                .filter(FadingRow::changed)
                .map(row -> row.directions().isEmpty() ? row.part() : row.part() + " (" + row.directions() + ")")
                .toList();
        String notApart = parts(rows, FadingRow::notApart);
        String still = parts(
                rows, row -> !row.changed() && !row.notApart() && row.refusal().isEmpty());
        String unmeasured = parts(rows, row -> !row.refusal().isEmpty());
        List<String> sentences = new ArrayList<>();
        if (!changed.isEmpty()) {
            String parts = String.join("; ", changed);
            sentences.add(w("change.changed", "calibrated", calibrated, "parts", parts));
        }
        if (!notApart.isEmpty()) {
            sentences.add(w("change.no-change", "apart", false, "parts", notApart));
        }
        if (!still.isEmpty()) {
            sentences.add(w("change.no-change", "apart", true, "parts", still));
        }
        if (!unmeasured.isEmpty()) {
            sentences.add(w("change.not-measurable-parts", "parts", unmeasured));
        }
        return String.join(" ", sentences);
    }

    private static String parts(List<FadingRow> rows, Predicate<FadingRow> wanted) {
        return rows.stream().filter(wanted).map(FadingRow::part).collect(Collectors.joining("; "));
    }
}
