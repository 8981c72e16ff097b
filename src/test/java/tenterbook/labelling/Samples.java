package tenterbook.labelling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import tenterbook.archive.record.LabelSheet;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.colour.space.Lab;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.Basis;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.LocalName;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Cut;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.FoldScheme;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

/** Pieces of the invented studio, with which the tests work. */
public final class Samples {
    public static final Studio STUDIO = new Studio(
            "Oficina Valderim",
            "Inês Valderim",
            "Porto Sarelho, Portugal",
            "Portugal",
            "",
            "",
            new NumberScheme("V"),
            Currency.getInstance("EUR"),
            "");

    /**
     * The same studio with particulars and names in other languages. The names show what is done with a maker's entries; they
     * are no check of any language.
     */
    public static final Studio PARTICULAR = new Studio(
            "Oficina Valderim",
            "Inês Valderim",
            "Porto Sarelho, Portugal",
            "Portugal",
            "",
            "",
            new NumberScheme("V"),
            Currency.getInstance("EUR"),
            "",
            "Porto Sarelho\nPortugal",
            "oficina@valderim.example",
            "",
            "",
            "",
            "",
            null,
            null,
            List.of(
                    name("silk", "fr-CA", "soie"),
                    name("Elastane", "fr-CA", "élasthanne"),
                    name("silk", "ja", "絹"),
                    name("cotton", "ja", "綿")),
            List.of(),
            null,
            null);

    private Samples() {}

    public static LocalName name(String term, String language, String name) {
        return new LocalName(term, language, name, "Inês Valderim");
    }

    public static Cloth cloth(String name, String wovenIn, FibreShare... content) {
        return new Cloth(
                new ClothId(name.substring(0, 2).toUpperCase(Locale.ROOT)),
                name,
                List.of(content),
                "",
                null,
                null,
                "",
                "",
                "",
                wovenIn,
                null,
                null,
                null,
                "");
    }

    public static FibreShare share(String fibre, Double percent) {
        return new FibreShare(fibre, percent, "");
    }

    /** A piece without other records. */
    public static PieceFacts alone(Studio studio, Piece piece) {
        return new PieceFacts(
                studio, piece, List.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map::of, List.of(),
                List::of, null);
    }

    /** On a stored sheet, with labels of its size. */
    public static PrintSettings on(PrintSettings settings, LabelSheet own) {
        return placed(
                settings.sized(own.labelWidthMm(), own.labelHeightMm()),
                new PrintSettings.Placement(SheetSize.OWN, own, PrintSettings.Placement.USUAL_ROLL_MM, 1, 1));
    }

    public static PrintSettings onRoll(PrintSettings settings, double widthMm) {
        return placed(settings, new PrintSettings.Placement(SheetSize.SINGLE, null, widthMm, 1, 1))
                .on(SheetSize.ROLL);
    }

    private static PrintSettings placed(PrintSettings s, PrintSettings.Placement placement) {
        return new PrintSettings(s.kind(), s.market(), s.format(), s.content(), placement, s.finish());
    }

    public static PrintSettings finished(PrintSettings s, boolean cutMarks, double bleedMm) {
        var finish = new PrintSettings.Finish(s.finish().blackOnly(), cutMarks, true, bleedMm);
        return new PrintSettings(s.kind(), s.market(), s.format(), s.content(), s.placement(), finish);
    }

    public static Quantity cm(double value) {
        return Quantity.between(value, value, Unit.CENTIMETRE, Basis.MEASURED);
    }

    public static Quantity count(double value) {
        return Quantity.between(value, value, Unit.COUNT, Basis.MEASURED);
    }

    public static CareTest test(CareTest.Kind kind, Double celsius, Boolean passed) {
        return new CareTest(
                kind,
                PartialDate.of(LocalDate.of(2024, 4, 2)),
                "strip, neutral soap",
                celsius == null ? null : Quantity.between(celsius, celsius, Unit.CELSIUS, Basis.MEASURED),
                kind == CareTest.Kind.DRY_CLEAN ? "looked at by day" : "",
                passed);
    }

    static Lot lot(String name, Role role) {
        return new Lot(
                new LotId(name.replace(' ', '-')),
                role,
                name,
                Source.UNKNOWN,
                "",
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                "",
                null);
    }

    static Step step(StepKind kind, DipSeries dips, String vat, String... lots) {
        List<Charge> charges = Arrays.stream(lots)
                .map(l -> new Charge(new LotId(l.replace(' ', '-')), null, null))
                .toList();
        return new Step(kind, null, charges, null, null, null, null, null, vat, null, dips, "");
    }

    static DipSeries dips(Quantity count) {
        return new DipSeries(count, null, null, null);
    }

    public static Piece piece(String number, String title, String other, Category category, List<CareTest> tests) {
        return new Piece(
                new PieceNumber(number),
                title,
                other,
                category,
                cm(180),
                cm(90),
                null,
                PartialDate.of(LocalDate.of(2024, 5, 12)),
                "",
                null,
                null,
                null,
                "",
                Money.read("420", Currency.getInstance("EUR")),
                "",
                null,
                null,
                tests,
                null,
                "",
                null);
    }

    /** The same piece, kept somewhere. */
    public static Piece placed(Piece piece, String place) {
        return new Piece(
                piece.number(),
                piece.title(),
                piece.otherTitle(),
                piece.category(),
                piece.length(),
                piece.width(),
                piece.mass(),
                piece.finished(),
                piece.edition(),
                piece.made(),
                piece.status(),
                piece.holder(),
                place,
                piece.price(),
                piece.trims(),
                piece.photos(),
                piece.faults(),
                piece.tests(),
                piece.events(),
                piece.notes(),
                null);
    }

    static Clamping clamping(FoldScheme fold, List<BoardUse> boards, Step... steps) {
        return new Clamping(
                new ClampingId("C24-004"),
                "",
                null,
                boards,
                fold,
                null,
                List.of(steps),
                null,
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                null);
    }

    /** A linen hanging of weld and woad between a recut pair of boards. */
    public static PieceFacts heron() {
        return facts(piece("V24-005", "Heron weir, second cutting", "", Category.WALL_HANGING, List.of()));
    }

    /** As {@link #heron()}, with a title in Japanese and a wash test that passed. */
    public static PieceFacts kasuri() {
        return facts(piece(
                "V24-005", "Heron weir", "板締め絞り", Category.SCARF, List.of(test(CareTest.Kind.HAND_WASH, 28.0, true))));
    }

    public static PieceFacts facts(Piece piece) {
        return facts(
                piece,
                List.of(cloth("linen voile", "Belgium", share("linen", 100.0))),
                List.of(lot("woad", Role.DYE), lot("weld", Role.DYE), lot("aluminium acetate", Role.MORDANT)),
                List.of(new BoardPair(
                        new BoardId("B02"),
                        "Heron weir",
                        "sycamore",
                        null,
                        null,
                        null,
                        null,
                        "",
                        List.of(
                                new BoardState("I", null, "", null, null, null),
                                new BoardState("II", null, "beak and weir recut", null, null, null)),
                        "")),
                List.of(clamping(
                        new FoldScheme(null, count(6), ""),
                        List.of(new BoardUse(new BoardId("B02"), "II")),
                        step(StepKind.MORDANTING, null, "", "aluminium acetate"),
                        step(StepKind.BATH, null, "", "weld"),
                        step(StepKind.DIPS, dips(count(3)), "Mare", "woad"))),
                List.of(
                        named(new Lab(57, -19, 14), 0.61, "weir green"),
                        named(new Lab(88, -3, 12), 0.27, "reserved linen"),
                        named(new Lab(44, -9, -14), 0.12, "deep water")));
    }

    private static ColourRegion named(Lab colour, double share, String name) {
        return new ColourRegion(ColourRole.OTHER, name, colour, share, List.of(), false);
    }

    /**
     * A piece with the records that say something of it.
     *
     * @param cloths cuts of the first clamping
     * @param colours named on a photograph of the piece as it now is
     */
    public static PieceFacts facts(
            Piece piece,
            List<Cloth> cloths,
            List<Lot> lots,
            List<BoardPair> boards,
            List<Clamping> clampings,
            List<ColourRegion> colours) {
        List<Clamping> made = new ArrayList<>(clampings);
        if (!made.isEmpty()) {
            made.set(0, cutFrom(made.get(0), cloths));
        }
        return new PieceFacts(
                STUDIO,
                piece.withPhotos(
                        colours.isEmpty()
                                ? List.of()
                                : List.of(new PiecePhoto(
                                        new Digest("a".repeat(64)), PhotoRole.FRONT, "", piece.state(), colours))),
                made,
                boards.stream().collect(Collectors.toMap(BoardPair::id, Function.identity())),
                cloths.stream().collect(Collectors.toMap(Cloth::id, Function.identity())),
                lots.stream().collect(Collectors.toMap(Lot::id, Function.identity())),
                Map.of(),
                Map.of(),
                Map::of,
                List.of(),
                List::of,
                null);
    }

    private static Clamping cutFrom(Clamping clamping, List<Cloth> cloths) {
        return new Clamping(
                clamping.id(),
                clamping.title(),
                clamping.when(),
                clamping.boards(),
                clamping.fold(),
                cloths.stream()
                        .map(cloth -> new Cut(cloth.id(), null, null, null, null))
                        .toList(),
                clamping.steps(),
                clamping.clamped(),
                clamping.pressure(),
                clamping.water(),
                clamping.lesson(),
                clamping.notes(),
                clamping.copiedFrom(),
                null,
                null,
                null);
    }

    /** The same made in the same way, of other cloths. */
    public static PieceFacts with(PieceFacts facts, Piece piece, List<Cloth> cloths) {
        return facts(
                piece,
                cloths,
                List.copyOf(facts.lots().values()),
                List.copyOf(facts.boards().values()),
                facts.clampings(),
                facts.piece().photos().stream()
                        .flatMap(photo -> photo.regions().stream())
                        .toList());
    }
}
