package tenterbook.sample;

import java.util.function.Function;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Layers;
import tenterbook.piece.MadeIn;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;
import tenterbook.recipe.ClampingId;

/** Reads the sample studio's finished pieces. */
final class SamplePieces {
    private SamplePieces() {}

    /** @param taken finds or takes the photograph that is told of */
    static Piece piece(Entered e, Function<Entered, PiecePhoto> taken) {
        return new Piece(
                new PieceNumber(e.text("number")),
                e.text("title"),
                e.text("otherTitle"),
                e.choice("category", Category.values()),
                e.quantity("length", Unit.CENTIMETRE),
                e.quantity("width", Unit.CENTIMETRE),
                e.quantity("mass", Unit.GRAM),
                e.date("finished"),
                e.text("edition"),
                e.each(
                        "made",
                        made -> new MadeIn(
                                new ClampingId(made.text("clamping")),
                                Layers.read(made.text("layers")),
                                made.text("note"))),
                e.choice("status", Status.values()),
                e.named("holder", PartyId::new),
                e.text("place"),
                e.money("price"),
                e.text("trims"),
                e.each("photos", taken),
                e.each("faults", fault -> new Fault(fault.text("kind"), fault.text("where"), fault.text("note"))),
                e.each("tests", SamplePieces::test),
                e.each("events", SamplePieces::event),
                e.text("notes"));
    }

    private static CareTest test(Entered e) {
        return new CareTest(
                e.choice("kind", CareTest.Kind.values()),
                e.date("when"),
                e.text("method"),
                e.quantity("temperature", Unit.CELSIUS),
                e.text("result"),
                e.judged("passed"));
    }

    private static Event event(Entered e) {
        return new Event(
                e.choice("kind", EventKind.values()),
                e.date("when"),
                e.date("until"),
                e.named("party", PartyId::new),
                e.money("price"),
                e.text("note"));
    }
}
