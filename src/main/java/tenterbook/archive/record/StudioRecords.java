package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.PERCENT;

import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.EarlierStudio;
import tenterbook.piece.LocalName;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Studio;
import tenterbook.piece.cost.Pricing;
import tenterbook.piece.label.SellingFacts;

/** The studio itself, the people and places it deals with, and the sheets of labels it prints on. */
public final class StudioRecords {
    private static final Part<LocalName> LOCAL_NAME = Part.<LocalName>of("local-name")
            .text("term", LocalName::term)
            .required()
            .text("language", LocalName::language)
            .required()
            .text("name", LocalName::name)
            .required()
            .blamed()
            .text("enteredBy", LocalName::enteredBy)
            .required()
            .built(v -> new LocalName(v.get("term"), v.get("language"), v.get("name"), v.get("enteredBy")));

    private static final Part<EarlierStudio> EARLIER = Part.<EarlierStudio>of("earlier-studio")
            .field("until", Measures.DATE, EarlierStudio::until)
            .required()
            .blamed()
            .text("name", EarlierStudio::name)
            .text("maker", EarlierStudio::maker)
            .text("place", EarlierStudio::place)
            .text("dyedIn", EarlierStudio::dyedIn)
            .built(v ->
                    new EarlierStudio(v.get("until"), v.get("name"), v.get("maker"), v.get("place"), v.get("dyedIn")));

    public static final Part<Studio> STUDIO = Part.<Studio>of("studio")
            .text("name", Studio::name)
            .blamed()
            .text("maker", Studio::maker)
            .text("place", Studio::place)
            .text("dyedIn", Studio::dyedIn)
            .text("contact", Studio::contact)
            .personal()
            .text("careLine", Studio::careLine)
            .field("numbers", new Plain<>("", NumberScheme::prefix, NumberScheme::new), Studio::numbers)
            .field("currency", Plain.CURRENCY, Studio::currency)
            .text("notice", Studio::notice)
            .text("postalAddress", Studio::postalAddress)
            .personal()
            .text("online", Studio::online)
            .personal()
            .text("phone", Studio::phone)
            .personal()
            .field("rn", new Plain<>("", text -> text, Studio::rn), Studio::rn)
            .field("caNumber", new Plain<>("", text -> text, Studio::caNumber), Studio::caNumber)
            .text("responsible", Studio::responsible)
            .personal()
            .choice("dateOrder", StoredCodes.DATE_ORDER, Studio::dateOrder)
            .field("timeZone", Plain.TIME_ZONE, Studio::timeZone)
            .list("names", LOCAL_NAME, Studio::names)
            .list("earlier", EARLIER, Studio::earlier)
            .text("registeredName", studio -> studio.selling().registeredName())
            .text("importer", studio -> studio.selling().importer())
            .personal()
            .text("soldIn", studio -> studio.selling().soldIn())
            .list("answers", LabelFactRecords.ANSWER, studio -> studio.selling().answers())
            .field("hourlyRate", MONEY, studio -> studio.selling().pricing().hourlyRate())
            .personal()
            .field(
                    "markup",
                    quantity(PERCENT),
                    studio -> studio.selling().pricing().markup())
            .personal()
            .field(
                    "commission",
                    quantity(PERCENT),
                    studio -> studio.selling().pricing().commission())
            .personal()
            .choice("lengths", StoredCodes.LENGTH_UNITS, Studio::lengths)
            .built(v -> new Studio(
                    v.get("name"),
                    v.get("maker"),
                    v.get("place"),
                    v.get("dyedIn"),
                    v.get("contact"),
                    v.get("careLine"),
                    v.get("numbers"),
                    v.get("currency"),
                    v.get("notice"),
                    v.get("postalAddress"),
                    v.get("online"),
                    v.get("phone"),
                    v.get("rn"),
                    v.get("caNumber"),
                    v.get("responsible"),
                    v.get("dateOrder"),
                    v.get("timeZone"),
                    v.get("names"),
                    v.get("earlier"),
                    new SellingFacts(
                            v.get("registeredName"),
                            v.get("importer"),
                            v.get("soldIn"),
                            v.get("answers"),
                            new Pricing(v.get("hourlyRate"), v.get("markup"), v.get("commission"))),
                    v.get("lengths")));

    public static final Part<Party> PARTY = Part.<Party>of("party")
            .field("id", Plain.identifier(PartyId::new), Party::id)
            .required()
            .key()
            .personal()
            .text("name", Party::name)
            .required()
            .personal()
            .blamed()
            .text("kind", Party::kind)
            .personal()
            .text("contact", Party::contact)
            .personal()
            .text("notes", Party::notes)
            .personal()
            .built(v -> new Party(v.get("id"), v.get("name"), v.get("kind"), v.get("contact"), v.get("notes")));

    private static final Numeric<Double> MM = Numeric.MILLIMETRES;
    private static final Numeric<Double> PER_MILLE = Numeric.decimal("‰");

    public static final Part<LabelSheet> LABEL_SHEET = Part.<LabelSheet>of("label-sheet")
            .text("name", LabelSheet::name)
            .required()
            .key()
            .blamed()
            .field("widthMm", MM, LabelSheet::widthMm)
            .required()
            .field("heightMm", MM, LabelSheet::heightMm)
            .required()
            .field("columns", Numeric.WHOLE, LabelSheet::columns)
            .required()
            .field("rows", Numeric.WHOLE, LabelSheet::rows)
            .required()
            .field("labelWidthMm", MM, LabelSheet::labelWidthMm)
            .required()
            .field("labelHeightMm", MM, LabelSheet::labelHeightMm)
            .required()
            .field("leftMm", MM, LabelSheet::leftMm)
            .required()
            .field("topMm", MM, LabelSheet::topMm)
            .required()
            .field("columnGapMm", MM, LabelSheet::columnGapMm)
            .required()
            .field("rowGapMm", MM, LabelSheet::rowGapMm)
            .required()
            .field("shiftRightMm", MM, LabelSheet::shiftRightMm)
            .required()
            .field("shiftDownMm", MM, LabelSheet::shiftDownMm)
            .required()
            .field("acrossPerMille", PER_MILLE, LabelSheet::acrossPerMille)
            .required()
            .field("downPerMille", PER_MILLE, LabelSheet::downPerMille)
            .required()
            .built(v -> new LabelSheet(
                    v.get("name"),
                    v.get("widthMm", 0.0),
                    v.get("heightMm", 0.0),
                    v.get("columns", 0),
                    v.get("rows", 0),
                    v.get("labelWidthMm", 0.0),
                    v.get("labelHeightMm", 0.0),
                    v.get("leftMm", 0.0),
                    v.get("topMm", 0.0),
                    v.get("columnGapMm", 0.0),
                    v.get("rowGapMm", 0.0),
                    v.get("shiftRightMm", 0.0),
                    v.get("shiftDownMm", 0.0),
                    v.get("acrossPerMille", 0.0),
                    v.get("downPerMille", 0.0)));

    private StudioRecords() {}
}
