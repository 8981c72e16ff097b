package tenterbook.web.form;

import static tenterbook.measure.Unit.CELSIUS;
import static tenterbook.measure.Unit.CENTIMETRE;
import static tenterbook.measure.Unit.GRAM;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.measure.Digest;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Layers;
import tenterbook.piece.MadeIn;
import tenterbook.piece.PartyId;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Specimen;
import tenterbook.piece.Status;
import tenterbook.piece.TestStandard;
import tenterbook.recipe.ClampingId;

/** A piece. Colours named on a photograph are not in this form; they stay with their photograph. */
public final class PieceForm implements RecordForm<Piece> {
    private final Supplier<Currency> currency;

    public PieceForm(Supplier<Currency> currency) {
        this.currency = currency;
    }

    @Override
    public Kind<Piece> kind() {
        return Kinds.PIECE;
    }

    @Override
    public Form filled(Piece piece) {
        Form form = Form.empty();
        form.put("number", piece.number()).put("title", piece.title()).put("otherTitle", piece.otherTitle());
        form.put("category", piece.category());
        form.put("length", piece.length());
        form.put("width", piece.width());
        form.put("mass", piece.mass());
        form.put("finished", piece.finished());
        form.put("edition", piece.edition());
        form.put("status", piece.status());
        form.put("holder", piece.holder()).put("place", piece.place()).put("price", piece.price());
        form.put("trims", piece.trims()).put("notes", piece.notes());
        for (int i = 0; i < piece.made().size(); i++) {
            MadeIn made = piece.made().get(i);
            form.row("made", i)
                    .put("clamping", made.clamping())
                    .put("layers", made.layers().entered())
                    .put("note", made.note());
        }
        for (int i = 0; i < piece.photos().size(); i++) {
            PiecePhoto photo = piece.photos().get(i);
            form.row("photos", i)
                    .put("digest", photo.photo())
                    .put("role", photo.role())
                    .put("caption", photo.caption())
                    .put("state", photo.state())
                    .put("layer", photo.layer());
        }
        for (int i = 0; i < piece.faults().size(); i++) {
            Fault fault = piece.faults().get(i);
            form.row("faults", i)
                    .put("what", fault.kind())
                    .put("where", fault.where())
                    .put("note", fault.note());
        }
        for (int i = 0; i < piece.tests().size(); i++) {
            CareTest test = piece.tests().get(i);
            Form row = form.row("tests", i);
            row.put("kind", test.kind()).put("method", test.method()).put("result", test.result());
            row.put("passed", test.passed() == null ? "" : test.passed() ? "yes" : "no");
            row.put("standard", test.standard()).put("grade", test.gradeWords()).put("specimen", test.specimen());
            row.put("when", test.when());
            row.put("temperature", test.temperature());
        }
        for (int i = 0; i < piece.events().size(); i++) {
            Event event = piece.events().get(i);
            Form row = form.row("events", i);
            row.put("kind", event.kind()).put("party", event.party()).put("price", event.price());
            row.put("when", event.when());
            row.put("until", event.until());
            row.put("note", event.note());
        }
        return form;
    }

    @Override
    public Piece read(Form form, Piece old) {
        PieceNumber number = old != null ? old.number() : form.read("number", null, PieceNumber::new);
        if (number == null) {
            form.problem("number", "A piece needs its number; the next free one was offered.");
        }
        List<MadeIn> made = form.each("made", row -> {
            ClampingId clamping = row.read("clamping", null, ClampingId::new);
            if (clamping == null) {
                row.problem("clamping", "Choose the clamping, or leave the row empty.");
                return null;
            }
            return new MadeIn(clamping, row.read("layers", Layers.UNRECORDED, Layers::read), row.text("note"));
        });
        List<PiecePhoto> photos = photos(form, old);
        List<Fault> faults =
                form.each("faults", row -> new Fault(row.text("what"), row.text("where"), row.text("note")));
        List<CareTest> tests = form.each(
                "tests",
                row -> row.build(
                        "kind",
                        () -> new CareTest(
                                row.choice("kind", CareTest.Kind.values()),
                                row.date("when"),
                                row.text("method"),
                                row.quantity("temperature", CELSIUS),
                                row.text("result"),
                                row.text("passed").isEmpty()
                                        ? null
                                        : row.text("passed").equals("yes"),
                                row.choice("standard", TestStandard.values()),
                                row.read("grade", null, CareTest::readGrade),
                                row.choice("specimen", Specimen.values()))));
        List<Event> events = form.each(
                "events",
                row -> row.build(
                        "kind",
                        () -> new Event(
                                row.choice("kind", EventKind.values()),
                                row.date("when"),
                                row.date("until"),
                                row.read("party", null, PartyId::new),
                                row.money("price", currency.get()),
                                row.text("note"))));
        Piece piece = form.build(
                "title",
                () -> new Piece(
                        number,
                        form.text("title"),
                        form.text("otherTitle"),
                        form.choice("category", Category.values()),
                        form.quantity("length", CENTIMETRE),
                        form.quantity("width", CENTIMETRE),
                        form.quantity("mass", GRAM),
                        form.date("finished"),
                        form.text("edition"),
                        made,
                        form.choice("status", Status.values()),
                        form.read("holder", null, PartyId::new),
                        form.text("place"),
                        form.money("price", currency.get()),
                        form.text("trims"),
                        photos,
                        faults,
                        tests,
                        events,
                        form.text("notes")));
        return form.hasProblems() ? null : piece;
    }

    /** The photographs in the form's order, each with the regions it had; all the old ones where the form shows none. */
    private static List<PiecePhoto> photos(Form form, Piece old) {
        List<PiecePhoto> before = old == null ? List.of() : old.photos();
        if (form.rows("photos").isEmpty()) {
            return form.has("photosShown") ? List.of() : before;
        }
        List<PiecePhoto> after = new ArrayList<>();
        for (Form row : form.rows("photos")) {
            Digest digest = row.read("digest", null, Digest::new);
            if (digest != null && !row.checked("leaveOut")) {
                Integer state = row.wholeNumber("state");
                Integer layer = row.wholeNumber("layer");
                after.add(new PiecePhoto(
                        digest,
                        row.choice("role", PhotoRole.values()),
                        row.text("caption"),
                        state == null ? 1 : state,
                        before.stream()
                                .filter(photo -> photo.photo().equals(digest))
                                .findFirst()
                                .map(PiecePhoto::regions)
                                .orElse(List.of()),
                        layer));
            }
        }
        return after;
    }
}
