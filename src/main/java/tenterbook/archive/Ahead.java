package tenterbook.archive;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.measure.DateWords;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Piece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * What has happened cannot lie ahead: the events of a piece, an examination, a payment, a clamping and its steps. The days of
 * what is agreed or planned are free.
 */
public final class Ahead {
    /** @param at the dotted name of its field */
    private record Happened(String at, Written what, PartialDate when) {}

    private Ahead() {}

    /**
     * That something lies ahead and so cannot have happened, uncertain or not; empty where it may have.
     *
     * @param today in any time zone: a day of grace is given
     */
    public static Optional<Message> of(Written what, PartialDate when, LocalDate today) {
        LocalDate first = when.from();
        return first != null && first.isAfter(today.plusDays(1))
                ? Optional.of(Message.of("custody.ahead", "event", what, "day", when, "today", DateWords.day(today)))
                : Optional.empty();
    }

    /**
     * Adds a fault for each day of a record that lies ahead. What was recorded so already passes, and so does all where the clock is
     * not believed.
     *
     * @param before null for a new record
     */
    public static void check(Ledger ledger, @Nullable Object before, @Nullable Object after, Faults faults) {
        LedgerClock clock = ledger.clock();
        LocalDate today = LocalDate.ofInstant(clock.instant(), clock.getZone());
        List<Happened> known = happened(before);
        for (Happened each : happened(after)) {
            Optional<Message> ahead = of(each.what, each.when, today);
            if (ahead.isPresent()
                    && known.stream().noneMatch(had -> had.what.equals(each.what) && had.when.equals(each.when))
                    && clock.doubt().isEmpty()) {
                faults.add(each.at, ahead.get());
            }
        }
    }

    private static List<Happened> happened(@Nullable Object record) {
        List<Happened> all = new ArrayList<>();
        if (record instanceof Piece piece) {
            piece.events().forEach(each -> row(all, "events", each.kind(), each.when()));
        } else if (record instanceof Agreement agreement) {
            agreement.payments().forEach(each -> row(all, "payments", each.kind(), each.when()));
        } else if (record instanceof Examination examination) {
            all.add(new Happened("when", Kinds.EXAMINATION.called(), examination.when()));
        } else if (record instanceof Clamping clamping) {
            clamping.steps().forEach(each -> row(all, "steps", each.kind(), each.when()));
            all.add(new Happened("when", Kinds.CLAMPING.called(), clamping.when()));
        }
        return all;
    }

    private static void row(List<Happened> all, String list, Written what, PartialDate when) {
        all.add(new Happened(list + "." + all.size() + ".when", what, when));
    }
}
