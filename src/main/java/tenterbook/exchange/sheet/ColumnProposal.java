package tenterbook.exchange.sheet;

import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import tenterbook.archive.field.Reading;
import tenterbook.archive.record.Measures;
import tenterbook.exchange.sheet.ColumnPlan.Chosen;
import tenterbook.exchange.sheet.ColumnPlan.DayOrder;
import tenterbook.exchange.sheet.file.SheetRow;
import tenterbook.measure.LengthUnits;
import tenterbook.words.Refusal;

/** Proposes which column is which field, by its name and, where that means nothing, by what is in it. */
public final class ColumnProposal {
    /** Share of the filled cells that must be alike before their column is taken for something. */
    private static final double MOST_CELLS = 0.8;

    private static final int FEWEST_CELLS = 3;
    private static final Reading READING = new Reading(Currency.getInstance("EUR"), LengthUnits.CM_AND_MM);
    private static final Pattern NUMBER_OF_PIECE =
            Pattern.compile("[\\p{L}]{1,4}[-. ]?\\d{2,4}([-.]\\d{1,4})?|\\d{4}[-.]\\d{1,4}");
    private static final Pattern SLASHED = Pattern.compile("(\\d{1,2})/(\\d{1,2})/\\d{4}");
    private static final Pattern MONEY = Pattern.compile(".*([€£$¥]|\\b(?:EUR|USD|GBP|JPY)\\b).*");
    private static final Pattern MAIL = Pattern.compile("\\S+@\\S+\\.\\S+");

    private final SheetKind kind;
    private final SheetHead head;

    public ColumnProposal(SheetKind kind, SheetHead head) {
        this.kind = kind;
        this.head = head;
    }

    public ColumnPlan plan() {
        ColumnNames names = new ColumnNames(kind);
        Set<String> taken = new HashSet<>();
        List<Chosen> chosen = new ArrayList<>();
        List<Integer> unnamed = new ArrayList<>();
        for (int i = 0; i < head.headings().size(); i++) {
            Optional<ColumnNames.Meaning> meaning =
                    names.meaning(head.headings().get(i));
            if (meaning.isPresent() && taken.add(meaning.get().path())) {
                chosen.add(new Chosen(i, meaning.get().path(), meaning.get().unit(), order(i), false));
            } else {
                unnamed.add(i);
            }
        }
        for (int column : unnamed) {
            byContent(column)
                    .filter(taken::add)
                    .ifPresent(path -> chosen.add(new Chosen(column, path, "", order(column), false)));
        }
        return new ColumnPlan(chosen);
    }

    /**
     * The proposal with what a person chose instead.
     *
     * @param chosen for names of columns, in any case of letters, the name of a field; empty for none
     * @throws Refusal where there is no such column or field
     */
    public ColumnPlan plan(Map<String, String> chosen) {
        List<Chosen> columns = new ArrayList<>(plan().columns());
        chosen.forEach((heading, field) -> {
            int at = at(heading);
            columns.removeIf(each -> each.at() == at);
            if (!field.isBlank()) {
                ColumnNames.Meaning meaning = new ColumnNames(kind)
                        .meaning(field)
                        .orElseThrow(() -> Refusal.of("import.no-such-field", "field", field));
                columns.removeIf(each -> each.path().equals(meaning.path()));
                columns.add(new Chosen(at, meaning.path(), meaning.unit(), order(at), false));
            }
        });
        return new ColumnPlan(columns);
    }

    private int at(String heading) {
        for (int i = 0; i < head.headings().size(); i++) {
            if (head.headings().get(i).equalsIgnoreCase(heading.strip())) {
                return i;
            }
        }
        throw Refusal.of("import.no-such-column", "column", heading, "columns", String.join(", ", head.headings()));
    }

    /** Whether cells are empty below filled ones in a column of dates, as where cells were merged. */
    public boolean hasGaps(Chosen chosen) {
        boolean date = kind.column(chosen.path())
                .filter(column -> column.value() == Measures.DATE)
                .isPresent();
        boolean above = false;
        for (SheetRow row : head.sample()) {
            boolean filled = !row.cell(chosen.at()).isBlank();
            if (date && above && !filled) {
                return true;
            }
            above |= filled;
        }
        return false;
    }

    /** Whether the column has days such as '05/03/2024', which can be read in two ways. */
    public boolean twoReadings(Chosen chosen) {
        return cells(chosen.at()).stream()
                .anyMatch(cell -> SLASHED.matcher(cell).matches());
    }

    /** By a cell that can be read in one way only, as '25/03/2024'; cells that contradict each other say nothing. */
    private DayOrder order(int column) {
        boolean dayFirst = false;
        boolean monthFirst = false;
        for (String cell : cells(column)) {
            var slashed = SLASHED.matcher(cell);
            if (slashed.matches()) {
                dayFirst |= Integer.parseInt(slashed.group(1)) > 12;
                monthFirst |= Integer.parseInt(slashed.group(2)) > 12;
            }
        }
        return dayFirst == monthFirst ? DayOrder.NOT_SAID : dayFirst ? DayOrder.DAY_FIRST : DayOrder.MONTH_FIRST;
    }

    private List<String> cells(int column) {
        return head.sample().stream()
                .map(row -> row.cell(column).strip())
                .filter(cell -> !cell.isEmpty())
                .toList();
    }

    private Optional<String> byContent(int column) {
        List<String> cells = cells(column);
        if (cells.size() < FEWEST_CELLS) {
            return Optional.empty();
        }
        boolean different = new HashSet<>(cells).size() == cells.size();
        if ((kind == SheetKind.PIECES && different || kind == SheetKind.SALES)
                && most(cells, cell -> NUMBER_OF_PIECE.matcher(cell).matches())) {
            return Optional.of(kind.identifying());
        }
        if (most(cells, cell -> MAIL.matcher(cell).matches())) {
            return kind.column("contact").map(SheetColumn::path);
        }
        if (most(cells, cell -> MONEY.matcher(cell).matches() && reads(Measures.MONEY, cell))) {
            return kind.column("price").map(SheetColumn::path);
        }
        if (most(cells, cell -> SLASHED.matcher(cell).matches() || reads(Measures.DATE, cell))) {
            return kind.columns().stream()
                    .filter(each -> each.value() == Measures.DATE)
                    .map(SheetColumn::path)
                    .findFirst();
        }
        return Optional.empty();
    }

    private static boolean most(List<String> cells, Predicate<String> alike) {
        return cells.stream().filter(alike).count() >= MOST_CELLS * cells.size();
    }

    private static boolean reads(tenterbook.archive.field.Written<?> value, String cell) {
        try {
            return value.parse(cell, READING) != null;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
