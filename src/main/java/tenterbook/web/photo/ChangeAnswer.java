package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
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
        String still = rows.stream()
                .filter(row -> !row.changed() && row.refusal().isEmpty())
                .map(FadingRow::part)
                .collect(Collectors.joining("; "));
        String unmeasured = rows.stream()
                .filter(row -> !row.refusal().isEmpty())
                .map(FadingRow::part)
                .collect(Collectors.joining("; "));
        List<String> sentences = new ArrayList<>();
        if (!changed.isEmpty()) {
            String parts = String.join("; ", changed);
            sentences.add(w("change.changed", "calibrated", calibrated, "parts", parts));
        }
        if (!still.isEmpty()) {
            sentences.add(w("change.no-change", "calibrated", calibrated, "parts", still));
        }
        if (!unmeasured.isEmpty()) {
            sentences.add(w("change.not-measurable-parts", "parts", unmeasured));
        }
        return String.join(" ", sentences);
    }
}
