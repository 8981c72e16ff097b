package tenterbook.piece.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PartyId;
import tenterbook.piece.Status;

/** What events give together, and which of them cannot follow another. */
class CustodyTest {
    private static final PartyId SALA = new PartyId("sala");
    private static final PartyId MUSEU = new PartyId("museu");

    private static Event on(String day, EventKind kind, PartyId party) {
        PartialDate when = day.isEmpty() ? PartialDate.UNRECORDED : PartialDate.of(LocalDate.parse(day));
        return new Event(kind, when, null, party, null, "", "", false);
    }

    private static List<Event> events(String kinds) {
        return Arrays.stream(kinds.split(" "))
                .map(kind -> on("", EventKind.valueOf(kind), null))
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "SOLD, SOLD",
        "LENT, ON_LOAN",
        "CONSIGNED, CONSIGNED",
        "LENT RETURNED, IN_STOCK",
        "SOLD RETURNED, IN_STOCK",
        "RESERVED, RESERVED",
        "RESERVED RELEASED, IN_STOCK",
        "RESERVED SOLD RETURNED, IN_STOCK",
        "CONSIGNED RESERVED, RESERVED",
        "CONSIGNED RESERVED RELEASED, CONSIGNED",
        "SECOND, SECOND",
        "SECOND LENT RETURNED, SECOND",
        "LENT LOST, LOST",
        "LENT LOST FOUND, ON_LOAN",
        "DESTROYED, DESTROYED",
        "WASHED, ",
    })
    void theLastEventsGiveTheStatus(String kinds, Status status) {
        Custody custody = Custody.of(events(kinds));
        assertThat(custody.status()).isEqualTo(status);
        assertThat(custody.problems()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "SOLD SOLD, sold",
        "SOLD LENT, sold",
        "SOLD PRICED, sold",
        "GIVEN SOLD, given",
        "LENT LENT, lent",
        "LENT CONSIGNED, lent",
        "CONSIGNED LENT, consigned",
        "WASHED RETURNED, not recorded as lent",
        "LENT RETURNED RETURNED, not recorded as lent",
        "SOLD RELEASED, not recorded as reserved",
        "WASHED FOUND, not recorded as lost",
        "LOST SOLD, lost",
        "DESTROYED WASHED, destroyed",
    })
    void whatCannotFollowIsNamedWithItsReason(String kinds, String reason) {
        List<Event> events = events(kinds);
        assertThat(Custody.of(events).problems()).singleElement().satisfies(problem -> {
            assertThat(problem.event()).isSameAs(events.get(events.size() - 1));
            assertThat(problem.why().inEnglish()).contains(reason);
        });
    }

    @Test
    void anUncertainEventMayFollowAndStillDecides() {
        Event maybe = new Event(EventKind.SOLD, null, null, MUSEU, null, "", "", true);
        Custody custody = Custody.of(List.of(on("", EventKind.GIVEN, SALA), maybe));
        assertThat(custody.problems()).isEmpty();
        assertThat(custody.status()).isEqualTo(Status.SOLD);
        assertThat(custody.holder()).isEqualTo(MUSEU);
    }

    @Test
    void anEarlierDayIsPutInItsPlaceHoweverLateItIsEntered() {
        List<Event> entered = List.of(
                on("2024-09-01", EventKind.RETURNED, null),
                on("2024-10-01", EventKind.SOLD, MUSEU),
                on("2024-05-01", EventKind.LENT, SALA));
        Custody custody = Custody.of(entered);
        assertThat(custody.problems()).isEmpty();
        assertThat(custody.status()).isEqualTo(Status.SOLD);
        assertThat(custody.holder()).isEqualTo(MUSEU);
    }

    @Test
    void anEarlierEventMayMakeALaterOneImpossible() {
        List<Event> sold = List.of(on("2024-10-01", EventKind.SOLD, MUSEU));
        assertThat(Custody.refusal(sold, on("2024-05-01", EventKind.GIVEN, SALA)))
                .hasValueSatisfying(why ->
                        assertThat(why.inEnglish()).contains("given away").contains("sold"));
        assertThat(Custody.refusal(sold, on("2024-05-01", EventKind.LENT, SALA)))
                .isEmpty();
    }

    /** Recorded so already is not the same as recorded as impossible for another reason, or of an equal event. */
    @Test
    void whatWasImpossibleAlreadyMayNotBecomeSoForAnotherReason() {
        Event first = on("2024-01-01", EventKind.CONSIGNED, SALA);
        Event back = on("2024-02-01", EventKind.RETURNED, null);
        Event ends = new Event(
                EventKind.CONSIGNED,
                PartialDate.of(LocalDate.of(2024, 3, 1)),
                PartialDate.of(LocalDate.of(2024, 1, 1)),
                MUSEU,
                null,
                "",
                "",
                false);
        Event later = on("2024-04-01", EventKind.RETURNED, null);
        assertThat(Custody.added(List.of(first, back, ends), List.of(first, later, ends))
                        .get(2)
                        .inEnglish())
                .contains("recorded as consigned (2024-01-01)");
        Event second = on("2024-03-01", EventKind.CONSIGNED, MUSEU);
        assertThat(Custody.added(List.of(first, second), List.of(on("2024-01-02", EventKind.CONSIGNED, SALA), second)))
                .as("the same reason, of which only the day changed")
                .isEmpty();
        assertThat(Custody.added(List.of(first, back, second, second), List.of(first, later, second, second)))
                .as("one of two equal events could not follow before, now neither can")
                .hasSize(1);
    }

    /** As on the sample's V24-003, consigned twice without coming back between. */
    @Test
    void whatIsImpossibleAlreadyMayChangeInAllThatTheOrderDoesNotRestOn() {
        Event first = on("2024-05-02", EventKind.CONSIGNED, SALA);
        Event again = on("2024-08-02", EventKind.CONSIGNED, SALA);
        PartialDate end = PartialDate.of(LocalDate.of(2025, 2, 2));
        Money price = new Money(new BigDecimal("320"), Currency.getInstance("EUR"));
        Event noted =
                new Event(EventKind.CONSIGNED, again.when(), end, SALA, price, "six months more", "room 2", false);
        assertThat(Custody.added(List.of(first, again), List.of(first, noted))).isEmpty();

        PartialDate later = PartialDate.of(LocalDate.of(2024, 9, 2));
        PartialDate before = PartialDate.of(LocalDate.of(2024, 8, 1));
        for (Event other : List.of(
                new Event(EventKind.LENT, again.when(), null, SALA, null, "", "", false),
                new Event(EventKind.CONSIGNED, later, null, SALA, null, "", "", false),
                new Event(EventKind.CONSIGNED, again.when(), null, MUSEU, null, "", "", false),
                new Event(EventKind.CONSIGNED, again.when(), before, SALA, null, "", "", false))) {
            assertThat(Custody.added(List.of(first, again), List.of(first, other)))
                    .containsOnlyKeys(1);
        }
        Event maybe = new Event(EventKind.CONSIGNED, again.when(), null, SALA, null, "", "", true);
        assertThat(Custody.added(List.of(first, maybe), List.of(first, again))).containsOnlyKeys(1);
    }

    @Test
    void theAdviceNamesTheEventThatCannotFollowAlsoWhereTheOtherIsUncertain() {
        Event second = on("2024-09-02", EventKind.SECOND, null);
        Event maybe =
                new Event(EventKind.SOLD, PartialDate.of(LocalDate.of(2024, 8, 2)), null, MUSEU, null, "", "", true);
        assertThat(Custody.refusal(List.of(second), maybe))
                .hasValueSatisfying(
                        why -> assertThat(why.inEnglish())
                                .endsWith(
                                        "Record first that it was returned, or mark “marked as seconds quality” (2024-09-02) as uncertain."));
    }

    @Test
    void whatIsReservedAtTheGalleryStaysThere() {
        Custody custody = Custody.of(
                List.of(on("2024-05-01", EventKind.CONSIGNED, SALA), on("2024-06-01", EventKind.RESERVED, MUSEU)));
        assertThat(custody.holder()).isEqualTo(SALA);
    }

    @Test
    void anEndBeforeTheBeginningIsRefused() {
        Event loan = new Event(
                EventKind.LENT,
                PartialDate.of(LocalDate.of(2024, 5, 1)),
                PartialDate.of(LocalDate.of(2024, 4, 1)),
                SALA,
                null,
                "",
                "",
                false);
        assertThat(Custody.refusal(List.of(), loan))
                .hasValueSatisfying(why -> assertThat(why.inEnglish()).contains("ends before it begins"));
    }
}
