package tenterbook.piece.fair;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.PieceNumber;

/**
 * A fair, an exhibition or a market, with the pieces chosen for it and its checklist.
 *
 * @param place town, hall or street
 * @param soldIn country of sale, whose rules hold for the labels; empty where not recorded
 * @param from its first day
 * @param until its last day
 * @param pieces each once, in the order of the lists
 * @param priceStatement what the price list states about tax, in the maker's words; empty where not recorded
 * @param purpose for customs; null where no border is crossed or it is not recorded
 */
public record Fair(
        FairId id,
        FairKind kind,
        String name,
        String place,
        String soldIn,
        PartialDate from,
        PartialDate until,
        List<FairPiece> pieces,
        List<FairTask> tasks,
        String priceStatement,
        @Nullable CustomsPurpose purpose,
        String notes) {
    /** By their beginning, those without a day last. */
    public static final Comparator<Fair> IN_TIME = Comparator.comparing(
                    Fair::firstDay, Comparator.nullsLast(Comparator.<LocalDate>naturalOrder()))
            .thenComparing(fair -> fair.id().value());

    public Fair {
        name = name == null ? "" : name.strip();
        place = place == null ? "" : place.strip();
        soldIn = soldIn == null ? "" : soldIn.strip();
        from = from == null ? PartialDate.UNRECORDED : from;
        until = until == null ? PartialDate.UNRECORDED : until;
        Map<PieceNumber, FairPiece> once = new LinkedHashMap<>();
        if (pieces != null) {
            pieces.forEach(each -> once.putIfAbsent(each.piece(), each));
        }
        pieces = List.copyOf(once.values());
        tasks = tasks == null ? List.of() : List.copyOf(tasks);
        priceStatement = priceStatement == null ? "" : priceStatement.strip();
        notes = notes == null ? "" : notes.strip();
    }

    /** As in 'F24-001 Summer fair'. */
    public String title() {
        return name.isEmpty() ? id.value() : id.value() + " " + name;
    }

    /** The earliest day on which it may begin; null where not known. */
    public @Nullable LocalDate firstDay() {
        return from.from() == null ? from.to() : from.from();
    }

    /** The latest day on which it may end; the latest of its beginning where its end is not known, null where neither is. */
    public @Nullable LocalDate lastDay() {
        PartialDate end = until.known() ? until : from;
        return end.to() == null ? end.from() : end.to();
    }

    /** Whether it is surely over. */
    public boolean over(LocalDate today) {
        LocalDate last = lastDay();
        return last != null && last.isBefore(today);
    }

    public Optional<FairPiece> piece(PieceNumber number) {
        return pieces.stream().filter(each -> each.piece().equals(number)).findFirst();
    }

    public long tasksOpen() {
        return tasks.stream().filter(task -> !task.done()).count();
    }

    /** The same with exactly these pieces; what is recorded of one that stays is kept. */
    public Fair withPieces(List<PieceNumber> numbers) {
        return with(
                numbers.stream()
                        .map(number -> piece(number).orElseGet(() -> new FairPiece(number, "", "")))
                        .toList(),
                tasks);
    }

    /** The same with a line added to its checklist. */
    public Fair withTask(String text) {
        List<FairTask> more = new ArrayList<>(tasks);
        more.add(new FairTask(text, false));
        return with(pieces, more);
    }

    public Fair withTasks(List<FairTask> others) {
        return with(pieces, others);
    }

    private Fair with(List<FairPiece> chosen, List<FairTask> lines) {
        return new Fair(id, kind, name, place, soldIn, from, until, chosen, lines, priceStatement, purpose, notes);
    }
}
