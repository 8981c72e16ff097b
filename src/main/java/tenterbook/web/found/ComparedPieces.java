package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.measure.NumberWords;
import tenterbook.piece.ColourRole;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.colour.ColourBand;
import tenterbook.words.Listing;

/**
 * Two to six pieces side by side.
 *
 * @param sides the pieces
 * @param colours one row for each part of the dyeing that any of them has a named colour of, then the main colour
 * @param rows what is recorded of them
 * @param differing labels of rows that differ
 * @param same labels of rows that are the same
 */
public record ComparedPieces(
        List<Side> sides, List<ColourRow> colours, List<Row> rows, List<String> differing, List<String> same) {
    public static final int MOST = 6;

    /** Whether the values of a row differ, as far as they are recorded. */
    public enum Verdict {
        SAME,
        DIFFERS,
        /** Ranges that overlap. */
        PERHAPS,
        NOT_RECORDED
    }

    /** @param photo digest of a photograph of its present state; empty where there is none */
    public record Side(String number, String title, String photo, String alt) {}

    /** @param verdict in words, as in 'differs' or 'not recorded for V24-003' */
    public record Row(String label, List<Cell> cells, Verdict kind, String verdict) {}

    /** @param swatches one for each piece, null where it has none */
    public record ColourRow(String label, List<ColourBand.@Nullable Swatch> swatches, String verdict) {}

    /** How they were made first. Sizes are compared side by side, not as one text. */
    private static final List<Column> COMPARED = List.of(
            Column.BOARD,
            Column.CLOTH,
            Column.FIBRE,
            Column.FOLD,
            Column.LAYERS,
            Column.DYES,
            Column.MORDANTS,
            Column.VATS,
            Column.DIPS,
            Column.LENGTH,
            Column.WIDTH,
            Column.MASS,
            Column.CATEGORY,
            Column.EDITION,
            Column.FINISHED,
            Column.FAULTS,
            Column.EXAMINED,
            Column.OVERALL,
            Column.STATUS,
            Column.HOLDER,
            Column.PLACE,
            Column.PRICE,
            Column.TAG);

    static List<Column> columns() {
        return COMPARED;
    }

    static ComparedPieces of(List<Subject> subjects) {
        List<Row> rows = COMPARED.stream()
                .map(column -> row(column, subjects))
                .filter(row -> row.cells().stream().anyMatch(Cell::recorded))
                .toList();
        return new ComparedPieces(
                subjects.stream().map(ComparedPieces::side).toList(),
                colours(subjects),
                rows,
                labels(rows, Verdict.DIFFERS),
                labels(rows, Verdict.SAME));
    }

    private static List<String> labels(List<Row> rows, Verdict verdict) {
        return rows.stream().filter(row -> row.kind == verdict).map(Row::label).toList();
    }

    private static Side side(Subject subject) {
        Optional<PiecePhoto> photo = subject.facts().pictures().stream().findFirst();
        return new Side(
                subject.number(),
                subject.facts().piece().title(),
                photo.map(each -> each.photo().hex()).orElse(""),
                photo.map(PiecePhoto::caption).orElse(""));
    }

    private static Row row(Column column, List<Subject> subjects) {
        // Amounts of several currencies are compared as they are written.
        List<Cell> cells = subjects.stream()
                .map(column::of)
                .map(cell -> column == Column.PRICE ? Cell.of(cell.text()) : cell)
                .toList();
        boolean amounts = column.amount() && column != Column.PRICE;
        Verdict verdict = verdict(cells, amounts);
        List<String> lacking = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            if (!cells.get(i).says(amounts)) {
                lacking.add(subjects.get(i).number());
            }
        }
        String words = switch (verdict) {
            case SAME -> w("found.compared.same");
            case DIFFERS -> w("found.compared.differs");
            case PERHAPS -> w("found.compared.perhaps");
            case NOT_RECORDED -> w("found.compared.not-recorded", "pieces", Listing.and(lacking));
        };
        return new Row(column.label(), cells, verdict, words);
    }

    /**
     * Two values that are recorded and cannot be the same decide; a value that is not known is equal to none.
     *
     * @param amounts whether they have ends, so that one without, as 'forgot', is not known
     */
    static Verdict verdict(List<Cell> cells, boolean amounts) {
        List<Cell> known = cells.stream().filter(cell -> cell.says(amounts)).toList();
        boolean overlap = false;
        for (Cell one : known) {
            for (Cell other : known) {
                Verdict two = verdict(one, other);
                if (two == Verdict.DIFFERS) {
                    return two;
                }
                overlap |= two == Verdict.PERHAPS;
            }
        }
        if (known.size() < cells.size()) {
            return Verdict.NOT_RECORDED;
        }
        return overlap ? Verdict.PERHAPS : Verdict.SAME;
    }

    private static Verdict verdict(Cell one, Cell other) {
        if (!one.amount() || !other.amount()) {
            return Set.copyOf(one.parts()).equals(Set.copyOf(other.parts())) ? Verdict.SAME : Verdict.DIFFERS;
        }
        if (one.exact() && other.exact()) {
            return one.from().equals(other.from()) ? Verdict.SAME : Verdict.DIFFERS;
        }
        boolean apart = one.endsBefore(other) || other.endsBefore(one);
        return apart ? Verdict.DIFFERS : one == other ? Verdict.SAME : Verdict.PERHAPS;
    }

    private static List<ColourRow> colours(List<Subject> subjects) {
        Set<ColourRole> roles = new LinkedHashSet<>();
        subjects.forEach(each -> each.facts().colours().named().forEach(colour -> roles.add(colour.role())));
        List<ColourRow> rows = new ArrayList<>();
        roles.forEach(role -> rows.add(colour(
                w(role),
                subjects.stream().map(each -> named(each.facts(), role)).toList())));
        rows.add(colour(
                w("found.compared.main-colour"),
                subjects.stream().map(each -> each.facts().colours().main()).toList()));
        return rows.stream()
                .filter(row -> row.swatches.stream().anyMatch(java.util.Objects::nonNull))
                .toList();
    }

    private static Optional<PieceColour> named(PieceFacts facts, ColourRole role) {
        return facts.colours().named().stream()
                .filter(colour -> colour.role() == role)
                .findFirst();
    }

    private static ColourRow colour(String label, List<Optional<PieceColour>> colours) {
        List<ColourBand.@Nullable Swatch> swatches = new ArrayList<>();
        List<Lab> known = new ArrayList<>();
        for (Optional<PieceColour> colour : colours) {
            colour.ifPresent(each -> known.add(each.colour()));
            swatches.add(colour.map(each -> ColourBand.swatch(each.colour(), each.called(), 1, 0))
                    .orElse(null));
        }
        double greatest = 0;
        for (Lab one : known) {
            for (Lab other : known) {
                greatest = Math.max(greatest, Ciede2000.difference(one, other));
            }
        }
        String words = known.size() < 2
                ? w("found.compared.one-colour")
                : w(
                        "found.compared.colour",
                        "words",
                        DifferenceWords.of(greatest),
                        "difference",
                        NumberWords.decimals(greatest, 1),
                        "two",
                        colours.size() == 2);
        return new ColourRow(label, swatches, words);
    }
}
