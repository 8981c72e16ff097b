package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.CLOTH_LENGTH;
import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.LAB;
import static tenterbook.archive.record.Measures.LAYERS;
import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.CELSIUS;
import static tenterbook.measure.Unit.GRAM;
import static tenterbook.measure.Unit.HOUR;
import static tenterbook.measure.Unit.PERCENT;

import java.util.Optional;
import tenterbook.archive.field.Entered;
import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.CareTest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Event;
import tenterbook.piece.Fault;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Particulars;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.cost.PieceCost;
import tenterbook.piece.cost.SaleTax;
import tenterbook.piece.edition.InEdition;
import tenterbook.piece.label.LabelFacts;
import tenterbook.recipe.ClampingId;
import tenterbook.words.Message;

/** A finished piece: what it is, how it was made, its photographs, faults, tests and what happened to it. */
public final class PieceRecord {
    /** Stored name of the name of the edition or set that a piece belongs to. */
    public static final String EDITION_NAME = "editionName";

    private static final Part<MadeIn> MADE_IN = Part.<MadeIn>of("made-in")
            .field("clamping", Plain.identifier(ClampingId::new), MadeIn::clamping)
            .key()
            .required()
            .blamed()
            .field("layers", LAYERS, MadeIn::layers)
            .text("note", MadeIn::note)
            .built(v -> new MadeIn(v.get("clamping"), v.get("layers"), v.get("note")));

    private static final Part<ColourRegion.Corner> CORNER = Part.<ColourRegion.Corner>of("picture-corner")
            .field("across", Numeric.DECIMAL, ColourRegion.Corner::across)
            .required()
            .field("down", Numeric.DECIMAL, ColourRegion.Corner::down)
            .required()
            .doubted(corner -> inside(corner.across()) && inside(corner.down())
                    ? Optional.empty()
                    : Optional.of(Message.of("input.corner")))
            .built(v -> new ColourRegion.Corner(v.get("across", 0.0), v.get("down", 0.0)));

    private static final Part<ColourRegion> REGION = Part.<ColourRegion>of("colour-region")
            .choice("role", StoredCodes.COLOUR_ROLE, ColourRegion::role)
            .required()
            .text("name", ColourRegion::name)
            .field("colour", LAB, ColourRegion::colour)
            .required()
            .field("share", Numeric.DECIMAL, ColourRegion::share)
            .list("corners", CORNER, ColourRegion::corners)
            .field("calibrated", Flag.JUDGED, ColourRegion::calibrated)
            .field("spread", Numeric.DECIMAL, ColourRegion::spread)
            .field("pixels", Numeric.WHOLE, ColourRegion::pixels)
            .field("likelyError", Numeric.DECIMAL, ColourRegion::likelyError)
            .built(v -> new ColourRegion(
                    v.get("role"),
                    v.get("name"),
                    v.get("colour"),
                    v.get("share"),
                    v.get("corners"),
                    v.get("calibrated", false),
                    v.get("spread"),
                    v.get("pixels"),
                    v.get("likelyError")));

    public static final Part<PiecePhoto> PHOTO = Part.<PiecePhoto>of("piece-photo")
            .field("photo", Plain.DIGEST, PiecePhoto::photo)
            .key()
            .required()
            .blamed()
            .choice("role", StoredCodes.PHOTO_ROLE, PiecePhoto::role)
            .text("caption", PiecePhoto::caption)
            .field("state", Numeric.WHOLE, PiecePhoto::state)
            .list("regions", REGION, PiecePhoto::regions)
            .field("layer", Numeric.WHOLE, PiecePhoto::layer)
            .built(v -> new PiecePhoto(
                    v.get("photo"),
                    v.get("role"),
                    v.get("caption"),
                    v.get("state", 1),
                    v.get("regions"),
                    v.get("layer")));

    private static final Part<Fault> FAULT = Part.<Fault>of("fault")
            .text("kind", Fault::kind)
            .text("where", Fault::where)
            .text("note", Fault::note)
            .built(v -> new Fault(v.get("kind"), v.get("where"), v.get("note")));

    /** Worst grade of the grey scale, 1 to 5 in half steps. */
    private static final Entered<Double> GRADE = new Entered<>(
            Numeric.DECIMAL,
            (text, reading) -> CareTest.readGrade(text),
            (grade, lengths) -> CareTest.gradeWords(grade));

    private static final Part<CareTest> CARE_TEST = Part.<CareTest>of("care-test")
            .choice("kind", StoredCodes.CARE_TEST, CareTest::kind)
            .required()
            .field("when", DATE, CareTest::when)
            .text("method", CareTest::method)
            .field("temperature", quantity(CELSIUS), CareTest::temperature)
            .text("result", CareTest::result)
            .field("passed", Flag.JUDGED, CareTest::passed)
            .choice("standard", StoredCodes.TEST_STANDARD, CareTest::standard)
            .field("grade", GRADE, CareTest::grade)
            .blamed()
            .choice("specimen", StoredCodes.SPECIMEN, CareTest::specimen)
            .built(v -> new CareTest(
                    v.get("kind"),
                    v.get("when"),
                    v.get("method"),
                    v.get("temperature"),
                    v.get("result"),
                    v.get("passed"),
                    v.get("standard"),
                    v.get("grade"),
                    v.get("specimen")));

    public static final Part<Event> EVENT = Part.<Event>of("event")
            .choice("kind", StoredCodes.EVENT_KIND, Event::kind)
            .required()
            .field("when", DATE, Event::when)
            .field("until", DATE, Event::until)
            .field("party", Plain.identifier(PartyId::new), Event::party)
            .personal()
            .field("price", MONEY, Event::price)
            .personal()
            .text("note", Event::note)
            .personal()
            .text("place", Event::place)
            .personal()
            .field("unsure", Flag.YES_ONLY, Event::unsure)
            .choice("taxWay", StoredCodes.TAX_WAY, event -> event.tax().way())
            .field("taxRate", quantity(PERCENT), event -> event.tax().rate())
            .field("tax", MONEY, event -> event.tax().amount())
            .personal()
            .blamed()
            .built(v -> new Event(
                    v.get("kind"),
                    v.get("when"),
                    v.get("until"),
                    v.get("party"),
                    v.get("price"),
                    v.get("note"),
                    v.get("place"),
                    v.get("unsure", false),
                    new SaleTax(v.get("taxWay"), v.get("taxRate"), v.get("tax"))));

    public static final Part<Piece> PIECE = Part.<Piece>of("piece")
            .field("number", Plain.identifier(PieceNumber::new), Piece::number)
            .required()
            .key()
            .text("title", Piece::title)
            .blamed()
            .text("otherTitle", Piece::otherTitle)
            .choice("category", StoredCodes.CATEGORY, Piece::category)
            .field("length", CLOTH_LENGTH, Piece::length)
            .field("width", CLOTH_LENGTH, Piece::width)
            .field("mass", quantity(GRAM), Piece::mass)
            .field("finished", DATE, Piece::finished)
            .text("edition", Piece::edition)
            .list("made", MADE_IN, Piece::made)
            .choice("status", StoredCodes.STATUS, Piece::status)
            .field("holder", Plain.identifier(PartyId::new), Piece::holder)
            .personal()
            .text("place", Piece::place)
            .personal()
            .field("price", MONEY, Piece::price)
            .personal()
            .text("trims", Piece::trims)
            .list("photos", PHOTO, Piece::photos)
            .list("faults", FAULT, Piece::faults)
            .list("tests", CARE_TEST, Piece::tests)
            .list("events", EVENT, Piece::events)
            .text("notes", Piece::notes)
            .personal()
            .text("maker", piece -> piece.particulars().maker())
            .text("helpers", piece -> piece.particulars().helpers())
            .personal()
            .text("inscriptions", piece -> piece.particulars().inscriptions())
            .text("features", piece -> piece.particulars().features())
            .text("creditLine", piece -> piece.particulars().creditLine())
            .text("imageRights", piece -> piece.particulars().imageRights())
            .text("hanging", piece -> piece.particulars().hanging())
            .text("packing", piece -> piece.particulars().packing())
            .text("packedSize", piece -> piece.particulars().packedSize())
            .text("commodityCode", piece -> piece.particulars().commodityCode())
            .text("treatments", piece -> piece.particulars().treatments())
            .text("residues", piece -> piece.particulars().residues())
            .list(
                    "components",
                    LabelFactRecords.COMPONENT,
                    piece -> piece.label().components())
            .text("soldIn", piece -> piece.label().soldIn())
            .field("madeToOrder", Flag.JUDGED, piece -> piece.label().madeToOrder())
            .list("answers", LabelFactRecords.ANSWER, piece -> piece.label().answers())
            .field("hours", quantity(HOUR), piece -> piece.particulars().cost().hours())
            .personal()
            .field("materials", MONEY, piece -> piece.particulars().cost().materials())
            .personal()
            .list(
                    "laterNumbers",
                    Plain.identifier(PieceNumber::new),
                    piece -> piece.particulars().laterNumbers())
            .text(EDITION_NAME, piece -> piece.inEdition().name())
            .field(
                    "editionEnlargedFrom",
                    Numeric.WHOLE,
                    piece -> piece.inEdition().enlargedFrom())
            .field(
                    "editionEnlargedTo",
                    Numeric.WHOLE,
                    piece -> piece.inEdition().enlargedTo())
            .built(v -> new Piece(
                    v.get("number"),
                    v.get("title"),
                    v.get("otherTitle"),
                    v.get("category"),
                    v.get("length"),
                    v.get("width"),
                    v.get("mass"),
                    v.get("finished"),
                    v.get("edition"),
                    v.get("made"),
                    v.get("status"),
                    v.get("holder"),
                    v.get("place"),
                    v.get("price"),
                    v.get("trims"),
                    v.get("photos"),
                    v.get("faults"),
                    v.get("tests"),
                    v.get("events"),
                    v.get("notes"),
                    new Particulars(
                            v.get("maker"),
                            v.get("helpers"),
                            v.get("inscriptions"),
                            v.get("features"),
                            v.get("creditLine"),
                            v.get("imageRights"),
                            v.get("hanging"),
                            v.get("packing"),
                            v.get("packedSize"),
                            v.get("commodityCode"),
                            v.get("treatments"),
                            v.get("residues"),
                            new LabelFacts(
                                    v.get("components"), v.get("soldIn"), v.get("madeToOrder"), v.get("answers")),
                            new PieceCost(v.get("hours"), v.get("materials")),
                            v.get("laterNumbers"),
                            new InEdition(
                                    v.get(EDITION_NAME), v.get("editionEnlargedFrom"), v.get("editionEnlargedTo")))));

    private PieceRecord() {}

    private static boolean inside(double part) {
        return part >= 0 && part <= 1;
    }
}
