package tenterbook.archive.record;

import tenterbook.archive.field.Codes;
import tenterbook.colour.target.Calibration;
import tenterbook.material.Evidence;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.Basis;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.ColourRole;
import tenterbook.piece.EventKind;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Specimen;
import tenterbook.piece.Status;
import tenterbook.piece.TestStandard;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.agreement.PaymentKind;
import tenterbook.piece.cost.TaxWay;
import tenterbook.piece.fair.CustomsPurpose;
import tenterbook.piece.fair.FairKind;
import tenterbook.piece.label.ComponentKind;
import tenterbook.recipe.Fold;
import tenterbook.recipe.StepKind;
import tenterbook.words.Conventions.DateOrder;

/** The stored code of every constant. Frozen: {@code StoredNamesTest} compares them with a list. */
public final class StoredCodes {
    public static final Codes<Unit> UNIT = Codes.of("unit", Unit.class)
            .code(Unit.COUNT, "count")
            .code(Unit.PERCENT, "percent")
            .code(Unit.RATIO, "ratio")
            .code(Unit.PH, "ph")
            .code(Unit.MILLIMETRE, "millimetre")
            .code(Unit.CENTIMETRE, "centimetre")
            .code(Unit.METRE, "metre")
            .code(Unit.INCH, "inch")
            .code(Unit.FOOT, "foot")
            .code(Unit.YARD, "yard")
            .code(Unit.SQUARE_METRE, "square-metre")
            .code(Unit.SQUARE_YARD, "square-yard")
            .code(Unit.MILLIGRAM, "milligram")
            .code(Unit.GRAM, "gram")
            .code(Unit.KILOGRAM, "kilogram")
            .code(Unit.OUNCE, "ounce")
            .code(Unit.POUND, "pound")
            .code(Unit.GRAM_PER_SQUARE_METRE, "gram-per-square-metre")
            .code(Unit.MOMME, "momme")
            .code(Unit.OUNCE_PER_SQUARE_YARD, "ounce-per-square-yard")
            .code(Unit.MILLILITRE, "millilitre")
            .code(Unit.LITRE, "litre")
            .code(Unit.FLUID_OUNCE, "fluid-ounce")
            .code(Unit.US_GALLON, "us-gallon")
            .code(Unit.GRAM_PER_LITRE, "gram-per-litre")
            .code(Unit.OUNCE_PER_GALLON, "ounce-per-gallon")
            .code(Unit.SECOND, "second")
            .code(Unit.MINUTE, "minute")
            .code(Unit.HOUR, "hour")
            .code(Unit.DAY, "day")
            .code(Unit.NIGHT, "night")
            .code(Unit.CELSIUS, "celsius")
            .code(Unit.FAHRENHEIT, "fahrenheit")
            .complete();

    public static final Codes<Basis> BASIS = Codes.of("basis", Basis.class)
            .code(Basis.MEASURED, "measured")
            .code(Basis.ESTIMATED, "estimated")
            .code(Basis.REMEMBERED, "remembered")
            .code(Basis.COMPUTED, "computed")
            .neverStored(Basis.UNKNOWN)
            .unrecorded("unknown")
            .complete();

    public static final Codes<AgreementKind> AGREEMENT_KIND = Codes.of("agreement-kind", AgreementKind.class)
            .code(AgreementKind.LOAN, "loan")
            .code(AgreementKind.CONSIGNMENT, "consignment")
            .complete();

    public static final Codes<PaymentKind> PAYMENT_KIND = Codes.of("payment-kind", PaymentKind.class)
            .code(PaymentKind.PAID, "paid")
            .code(PaymentKind.REFUNDED, "refunded")
            .complete();

    public static final Codes<FairKind> FAIR_KIND = Codes.of("fair-kind", FairKind.class)
            .code(FairKind.FAIR, "fair")
            .code(FairKind.EXHIBITION, "exhibition")
            .code(FairKind.MARKET, "market")
            .complete();

    public static final Codes<CustomsPurpose> CUSTOMS_PURPOSE = Codes.of("customs-purpose", CustomsPurpose.class)
            .code(CustomsPurpose.SALE, "sale")
            .code(CustomsPurpose.TEMPORARY, "temporary")
            .complete();

    public static final Codes<TaxWay> TAX_WAY = Codes.of("tax-way", TaxWay.class)
            .code(TaxWay.INCLUDED, "included")
            .code(TaxWay.ADDED, "added")
            .code(TaxWay.NONE, "none")
            .complete();

    public static final Codes<Evidence> EVIDENCE = Codes.of("evidence", Evidence.class)
            .code(Evidence.SUPPLIER, "supplier")
            .code(Evidence.INVOICE, "invoice")
            .code(Evidence.LABORATORY, "laboratory")
            .code(Evidence.BURN_TEST, "burn-test")
            .code(Evidence.OWN_GUESS, "own-guess")
            .complete();

    public static final Codes<Role> ROLE = Codes.of("role", Role.class)
            .code(Role.DYE, "dye")
            .code(Role.MORDANT, "mordant")
            .code(Role.ASSISTANT, "assistant")
            .complete();

    public static final Codes<Source> SOURCE = Codes.of("source", Source.class)
            .code(Source.BOTANICAL, "botanical")
            .code(Source.ANIMAL, "animal")
            .code(Source.MINERAL, "mineral")
            .code(Source.SYNTHETIC, "synthetic")
            .code(Source.UNKNOWN, "unknown")
            .complete();

    public static final Codes<Fold.Axis> FOLD_AXIS = Codes.of("fold-axis", Fold.Axis.class)
            .code(Fold.Axis.LENGTH, "length")
            .code(Fold.Axis.WIDTH, "width")
            .complete();

    public static final Codes<Fold.Style> FOLD_STYLE = Codes.of("fold-style", Fold.Style.class)
            .code(Fold.Style.ACCORDION, "accordion")
            .code(Fold.Style.HALVING, "halving")
            .code(Fold.Style.ROLLED, "rolled flat")
            .complete();

    public static final Codes<StepKind> STEP_KIND = Codes.of("step-kind", StepKind.class)
            .code(StepKind.PREPARATION, "preparation")
            .code(StepKind.MORDANTING, "mordanting")
            .code(StepKind.BATH, "bath")
            .code(StepKind.LOCAL_COLOUR, "local colour")
            .code(StepKind.DIPS, "dips")
            .code(StepKind.RESTING, "resting")
            .code(StepKind.WASHING, "washing")
            .code(StepKind.OTHER, "other")
            .complete();

    public static final Codes<Category> CATEGORY = Codes.of("category", Category.class)
            .code(Category.WALL_HANGING, "wall hanging")
            .code(Category.SCARF, "scarf")
            .code(Category.SHAWL, "shawl")
            .code(Category.GARMENT, "garment")
            .code(Category.YARDAGE, "yardage")
            .code(Category.TABLE_LINEN, "table linen")
            .code(Category.CUSHION, "cushion cover")
            .code(Category.SAMPLE, "sample or proof")
            .code(Category.OTHER, "other")
            .unrecorded("not said")
            .complete();

    public static final Codes<Status> STATUS = Codes.of("status", Status.class)
            .code(Status.IN_STOCK, "in stock")
            .code(Status.KEPT, "kept")
            .code(Status.RESERVED, "reserved")
            .code(Status.CONSIGNED, "consigned")
            .code(Status.ON_LOAN, "on loan")
            .code(Status.HANGING, "hanging")
            .code(Status.SOLD, "sold")
            .code(Status.GIVEN, "given")
            .code(Status.SECOND, "second")
            .code(Status.LOST, "lost")
            .code(Status.DESTROYED, "destroyed")
            .unrecorded("not said")
            .complete();

    public static final Codes<EventKind> EVENT_KIND = Codes.of("event-kind", EventKind.class)
            .code(EventKind.PHOTOGRAPHED, "photographed")
            .code(EventKind.SHOWN, "shown")
            .code(EventKind.CONSIGNED, "consigned")
            .code(EventKind.LENT, "lent")
            .code(EventKind.RETURNED, "returned")
            .code(EventKind.SOLD, "sold")
            .code(EventKind.GIVEN, "given")
            .code(EventKind.MENDED, "mended")
            .code(EventKind.WASHED, "washed")
            .code(EventKind.DYED_AGAIN, "dyed again")
            .code(EventKind.EXAMINED, "examined")
            .code(EventKind.RESERVED, "reserved")
            .code(EventKind.RELEASED, "released")
            .code(EventKind.MOVED, "moved")
            .code(EventKind.PRICED, "priced")
            .code(EventKind.SECOND, "second")
            .code(EventKind.LOST, "lost")
            .code(EventKind.FOUND, "found")
            .code(EventKind.DESTROYED, "destroyed")
            .code(EventKind.OTHER, "other")
            .complete();

    public static final Codes<PhotoRole> PHOTO_ROLE = Codes.of("photo-role", PhotoRole.class)
            .code(PhotoRole.FRONT, "front")
            .code(PhotoRole.BACK, "back")
            .code(PhotoRole.DETAIL, "detail")
            .code(PhotoRole.LAYER, "layer")
            .code(PhotoRole.FAULT, "fault")
            .code(PhotoRole.IN_PLACE, "in place")
            .code(PhotoRole.WORK, "at work")
            .code(PhotoRole.PAPER, "paper")
            .code(PhotoRole.OTHER, "other")
            .complete();

    public static final Codes<ColourRole> COLOUR_ROLE = Codes.of("colour-role", ColourRole.class)
            .code(ColourRole.GROUND, "ground")
            .code(ColourRole.RESIST, "resist")
            .code(ColourRole.LOCAL, "local colour")
            .code(ColourRole.OTHER, "other")
            .complete();

    public static final Codes<CareTest.Kind> CARE_TEST = Codes.of("care-test-kind", CareTest.Kind.class)
            .code(CareTest.Kind.HAND_WASH, "hand wash")
            .code(CareTest.Kind.MACHINE_WASH, "machine wash")
            .code(CareTest.Kind.CHLORINE_BLEACH, "chlorine bleach")
            .code(CareTest.Kind.OTHER_BLEACH, "non-chlorine bleach")
            .code(CareTest.Kind.TUMBLE_DRY, "tumble dry")
            .code(CareTest.Kind.LINE_DRY, "line dry")
            .code(CareTest.Kind.FLAT_DRY, "flat dry")
            .code(CareTest.Kind.DRY_CLEAN, "dry clean")
            .code(CareTest.Kind.IRON, "iron")
            .code(CareTest.Kind.RUB, "rub")
            .code(CareTest.Kind.WATER, "water")
            .code(CareTest.Kind.LIGHT, "light")
            .code(CareTest.Kind.OTHER, "other")
            .complete();

    public static final Codes<TestStandard> TEST_STANDARD = Codes.of("test-standard", TestStandard.class)
            .code(TestStandard.OWN, "own method")
            .code(TestStandard.ISO_105_C06, "ISO 105-C06")
            .code(TestStandard.ISO_105_X12, "ISO 105-X12")
            .code(TestStandard.ISO_105_B02, "ISO 105-B02")
            .code(TestStandard.ISO_105_E01, "ISO 105-E01")
            .code(TestStandard.AATCC_61, "AATCC 61")
            .code(TestStandard.AATCC_8, "AATCC 8")
            .code(TestStandard.AATCC_16, "AATCC 16")
            .complete();

    public static final Codes<Specimen> SPECIMEN = Codes.of("specimen", Specimen.class)
            .code(Specimen.PIECE, "the piece itself")
            .code(Specimen.STRIP, "a strip dyed with it")
            .code(Specimen.OTHER, "another cloth or dye")
            .complete();

    public static final Codes<ComponentKind> COMPONENT_KIND = Codes.of("component-kind", ComponentKind.class)
            .code(ComponentKind.LINING, "lining")
            .code(ComponentKind.EMBROIDERY, "embroidery")
            .code(ComponentKind.ELASTIC, "elastic")
            .code(ComponentKind.TRIMMING, "trimming")
            .code(ComponentKind.DECORATION, "decoration")
            .code(ComponentKind.SECTION, "section")
            .complete();

    public static final Codes<Calibration> CALIBRATION = Codes.of("calibration-method", Calibration.class)
            .code(Calibration.NONE, "uncalibrated")
            .code(Calibration.GREY_CARD, "one grey card")
            .code(Calibration.WHITE_AND_BLACK, "a white and a black card")
            .code(Calibration.CHART, "a chart of 24 patches")
            .code(Calibration.CAMERA_PROFILE, "a grey card and a chart by the same camera")
            .complete();

    public static final Codes<DateOrder> DATE_ORDER = Codes.of("date-order", DateOrder.class)
            .code(DateOrder.DAY_FIRST, "day-first")
            .code(DateOrder.MONTH_FIRST, "month-first")
            .code(DateOrder.YEAR_FIRST, "year-first")
            .complete();

    public static final Codes<LengthUnits> LENGTH_UNITS = Codes.of("length-units", LengthUnits.class)
            .code(LengthUnits.CM_AND_MM, "cm-and-mm")
            .code(LengthUnits.CENTIMETRES, "cm")
            .code(LengthUnits.INCHES, "in")
            .complete();

    private StoredCodes() {}
}
