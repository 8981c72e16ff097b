package tenterbook.piece.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.PieceRecord;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;

/** What an act makes of a piece. */
class ActTest {
    private static Piece piece(String more) {
        return Kinds.PIECE
                .codec()
                .fromText(("{'number': 'V24-009', 'place': 'drawer 4'" + more + "}").replace('\'', '"'));
    }

    private static Event event(EventKind kind, String day, String place) {
        return new Event(
                kind,
                PartialDate.of(LocalDate.parse(day)),
                null,
                new PartyId("sala"),
                Money.read("90", Currency.getInstance("EUR")),
                "",
                place,
                false);
    }

    @Test
    void aSaleLeavesThePlaceAndIsTheWholeStatus() {
        Piece sold = Act.after(piece(", 'status': 'in stock'"), event(EventKind.SOLD, "2026-05-01", ""));
        assertThat(sold.status()).isNull();
        assertThat(sold.place()).isEmpty();
        assertThat(sold.price()).isNull();
        assertThat(Custody.of(sold.events()).status()).isEqualTo(Status.SOLD);
    }

    /** As an older program stored it: status and holder typed beside the event that gives them. */
    @Test
    void aCorrectedEventTakesWhatWasTypedOfStatusAndHolderWithIt() {
        Event lent = event(EventKind.LENT, "2026-05-01", "");
        Piece old = piece(", 'status': 'on loan', 'holder': 'sala'");
        old = old.withEvents(List.of(lent), old.status(), old.holder(), "", null);
        Event toMuseum = new Event(EventKind.LENT, lent.when(), null, new PartyId("museu"), null, "", "", false);
        Piece corrected = Act.corrected(old, 0, toMuseum);
        assertThat(corrected.holder()).isNull();
        assertThat(corrected.status()).isNull();
        assertThat(Custody.of(corrected.events()).holder()).isEqualTo(new PartyId("museu"));
        Piece otherwise = old.withEvents(List.of(lent), Status.SOLD, new PartyId("buyer-1"), "", null);
        assertThat(Act.corrected(otherwise, 0, toMuseum).holder())
                .as("what the events did not give stays")
                .isEqualTo(new PartyId("buyer-1"));
    }

    @Test
    void aTypedStatusBecomesAnEventWithoutADayBeforeTheNewOne() {
        Piece old = piece(", 'status': 'on loan', 'holder': 'museu'");
        Piece back = Act.after(old, event(EventKind.RETURNED, "2026-05-01", "drawer 2"));
        assertThat(back.events()).extracting(Event::kind).containsExactly(EventKind.LENT, EventKind.RETURNED);
        assertThat(back.events().get(0).party()).isEqualTo(new PartyId("museu"));
        assertThat(back.events().get(0).when().recorded()).isFalse();
        assertThat(back.place()).isEqualTo("drawer 2");
        assertThat(back.holder()).isNull();
        assertThat(Custody.of(back.events()).problems()).isEmpty();
    }

    @Test
    void whatDecidesNothingLeavesTheTypedStatusAlone() {
        Piece washed = Act.after(piece(", 'status': 'kept'"), event(EventKind.WASHED, "2026-05-01", ""));
        assertThat(washed.status()).isEqualTo(Status.KEPT);
        assertThat(washed.place()).isEqualTo("drawer 4");
        assertThat(washed.events()).hasSize(1);
    }

    @Test
    void anEventOfLongAgoDoesNotMoveThePieceToday() {
        Piece sold = Act.after(piece(""), event(EventKind.SOLD, "2026-05-01", "Vermia"));
        Piece later = Act.after(sold, event(EventKind.LENT, "2024-01-01", "Lisbon"));
        assertThat(later.place()).isEqualTo("Vermia");
        assertThat(Custody.of(later.events()).status()).isEqualTo(Status.SOLD);
    }

    @Test
    void aPriceIsAskedOnlyWhereTheActAsksIt() {
        assertThat(Act.after(piece(""), event(EventKind.PRICED, "2026-05-01", ""))
                        .price())
                .hasToString("90\u00a0EUR");
        assertThat(Act.after(piece(""), event(EventKind.LENT, "2026-05-01", "")).price())
                .isNull();
    }

    @Test
    void whatIsTypedAsSoldCannotBeSoldAgain() {
        Piece sold = piece(", 'status': 'sold'");
        assertThat(Act.SELL.possible(sold)).isFalse();
        assertThat(Act.RETURN.possible(sold)).isTrue();
        assertThat(Act.refusal(sold, event(EventKind.SOLD, "2026-05-01", ""))).isPresent();
    }

    @Test
    void everyActWritesAnEventThatCanBeStored() {
        for (Act act : Act.values()) {
            Piece after = piece("").withEvents(List.of(event(act.event(), "2026-05-01", "x")), null, null, "", null);
            assertThat(Kinds.PIECE
                            .codec()
                            .fromText(PieceRecord.PIECE.write(after).toString()))
                    .as(act.toString())
                    .isEqualTo(after);
        }
    }
}
