package tenterbook.bench;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.ledger.LedgerTransaction;
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
import tenterbook.piece.Category;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Fault;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Cut;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

/** Writes an invented archive through the ledger: two pieces to a clamping, one photograph with six colours each. */
final class BenchArchive {
    static final String[] WORDS = ("heron weir fig wasp swift salt pan almond terrace net float tide reed channel land"
                    + " beak wing crest ebb flood moon noon dusk dawn rain well cistern pear lime cherry walnut sycamore"
                    + " hornbeam lacquer wax paste clamp screw wedge fold layer selvedge warp weft cut edge hem fringe"
                    + " indigo woad madder weld lac cutch pomegranate iron alum tannin mordant vat dip airing rinse"
                    + " bleed leak pale uneven crisp soft deep clear dull bright second proof gift loan museum gallery"
                    + " porto sarelho oficina cais ponte vila praia maré folha água névoa kyōkechi itajime jiaxie shibori"
                    + " 板締め 板締め絞り 夾纈 藍 茜 絞り")
            .split(" ");
    private static final int ACT = 5000;
    private static final Status[] STATUSES = Status.values();
    private static final Category[] CATEGORIES = Category.values();
    private final Random random = new Random(24);

    private final Archive archive;

    private BenchArchive(Archive archive) {
        this.archive = archive;
    }

    static void write(Archive archive, int pieces) {
        BenchArchive writing = new BenchArchive(archive);
        archive.ledger().write("bench", writing::shared);
        for (int from = 0; from < pieces; from += ACT) {
            int first = from;
            archive.ledger().write("bench", act -> {
                for (int i = first; i < Math.min(pieces, first + ACT); i++) {
                    writing.piece(act, i);
                }
                return null;
            });
            System.err.printf("wrote %,d of %,d pieces%n", Math.min(pieces, from + ACT), pieces);
        }
    }

    private String text(int words) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < words; i++) {
            text.append(i == 0 ? "" : " ").append(WORDS[skewed(WORDS.length)]);
        }
        return text.toString();
    }

    /** Some values are common and many rare, as in a real studio. */
    private int skewed(int bound) {
        return (int) (bound * Math.pow(random.nextDouble(), 1.7));
    }

    private Object shared(LedgerTransaction act) {
        for (int i = 1; i <= 60; i++) {
            act.create(
                    Kinds.BOARD_PAIR,
                    new BoardPair(
                            new BoardId("B%02d".formatted(i)),
                            text(2),
                            text(1),
                            null,
                            null,
                            null,
                            null,
                            "",
                            List.of(
                                    new BoardState("I", null, "", null, null, null),
                                    new BoardState("II", null, text(3), null, null, null)),
                            text(6)));
        }
        String[] fibres = {"silk", "linen", "cotton", "hemp", "wool"};
        for (int i = 1; i <= 40; i++) {
            act.create(
                    Kinds.CLOTH,
                    new Cloth(
                            new ClothId("K%02d".formatted(i)),
                            text(2),
                            List.of(new FibreShare(fibres[i % fibres.length], 100.0, "")),
                            "",
                            null,
                            null,
                            "",
                            "",
                            "",
                            "",
                            null,
                            null,
                            null,
                            ""));
        }
        String[] names = {"weld", "madder", "lac extract", "cutch", "pomegranate rind", "walnut hull", "woad"};
        for (int i = 1; i <= 120; i++) {
            boolean mordant = i % 4 == 0;
            act.create(
                    Kinds.LOT,
                    new Lot(
                            new LotId("L%03d".formatted(i)),
                            mordant ? Role.MORDANT : Role.DYE,
                            mordant ? (i % 8 == 0 ? "alum" : "aluminium acetate") : names[i % names.length],
                            Source.BOTANICAL,
                            "",
                            "",
                            "",
                            "lot " + i,
                            "",
                            null,
                            null,
                            null,
                            "",
                            null));
        }
        for (int i = 1; i <= 80; i++) {
            act.create(Kinds.PARTY, new Party(new PartyId("party-" + i), text(2) + " " + i, "gallery", "", ""));
        }
        return null;
    }

    private void piece(LedgerTransaction act, int i) {
        ClampingId clamping = new ClampingId("C-%06d".formatted(i / 2));
        if (i % 2 == 0) {
            act.create(Kinds.CLAMPING, clamping(clamping));
        }
        List<PaletteColour> palette = palette();
        Digest digest = Digest.of(("bench " + i).getBytes(StandardCharsets.UTF_8));
        // There is no file to look for the cloth in, so the picture is said to be all cloth.
        archive.cloths()
                .keep(
                        digest,
                        List.of(),
                        new SeenCloth(new ClothOutline(Edge.FILLS_THE_PICTURE, Region.WHOLE.corners(), 1), palette));
        act.create(
                Kinds.PHOTO,
                new Photo(
                        digest,
                        "img-" + i + ".jpg",
                        2_000_000,
                        "image/jpeg",
                        4000,
                        3000,
                        1,
                        "",
                        "",
                        "",
                        "",
                        false,
                        true,
                        List.of(),
                        palette,
                        Photo.UNCALIBRATED,
                        List.of()));
        int year = 1995 + i % 30;
        LocalDate day = LocalDate.of(year, 1, 1).plusDays(random.nextInt(360));
        ColourRegion ground =
                new ColourRegion(ColourRole.GROUND, "", palette.get(0).colour(), null, null, false);
        List<Fault> faults = random.nextInt(4) == 0
                ? List.of(new Fault(random.nextBoolean() ? "leak" : "bleed", text(3), text(4)))
                : List.of();
        Status status = STATUSES[skewed(STATUSES.length)];
        act.create(
                Kinds.PIECE,
                new Piece(
                        new PieceNumber("V%02d-%05d".formatted(year % 100, i)),
                        text(3),
                        i % 5 == 0 ? text(2) : "",
                        CATEGORIES[skewed(CATEGORIES.length)],
                        length(60 + random.nextInt(200)),
                        length(30 + random.nextInt(90)),
                        null,
                        random.nextInt(12) == 0 ? null : PartialDate.of(day),
                        "",
                        List.of(new MadeIn(clamping, null, "")),
                        status,
                        random.nextInt(3) == 0 ? new PartyId("party-" + (1 + skewed(80))) : null,
                        text(2),
                        new Money(BigDecimal.valueOf(20 + random.nextInt(900)), Currency.getInstance("EUR")),
                        "",
                        List.of(new PiecePhoto(digest, PhotoRole.FRONT, text(5), 1, List.of(ground))),
                        faults,
                        null,
                        null,
                        text(18),
                        null));
    }

    private static Quantity length(double cm) {
        return Quantity.between(cm, cm, Unit.CENTIMETRE, Basis.MEASURED);
    }

    private Clamping clamping(ClampingId id) {
        LotId dye = new LotId("L%03d".formatted(1 + skewed(120)));
        LotId mordant = new LotId("L%03d".formatted(4 * (1 + skewed(29))));
        Step bath = new Step(
                StepKind.BATH,
                null,
                dye.equals(mordant)
                        ? List.of(new Charge(dye, null, null))
                        : List.of(new Charge(dye, null, null), new Charge(mordant, null, null)),
                null,
                null,
                null,
                null,
                null,
                "",
                null,
                null,
                text(6));
        Step dips = new Step(
                StepKind.DIPS,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "Mare",
                null,
                new DipSeries(
                        Quantity.between(1 + random.nextInt(8), 9 + random.nextInt(3), Unit.COUNT, Basis.REMEMBERED),
                        null,
                        null,
                        null),
                "");
        return new Clamping(
                id,
                text(2),
                null,
                List.of(new BoardUse(
                        new BoardId("B%02d".formatted(1 + skewed(60))), random.nextBoolean() ? "I" : "II")),
                null,
                List.of(new Cut(new ClothId("K%02d".formatted(1 + skewed(40))), null, null, null, null)),
                List.of(bath, dips),
                null,
                text(2),
                "rain",
                text(10),
                text(12),
                null,
                null,
                null,
                null);
    }

    /** Six colours near the hues of indigo, madder, weld and undyed cloth. */
    private List<PaletteColour> palette() {
        double[][] centres = {{40, -4, -23}, {43, 39, 27}, {56, -18, 12}, {88, 0, 8}, {33, 10, 12}, {70, 8, 40}};
        List<PaletteColour> palette = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double[] near = centres[(i + skewed(centres.length)) % centres.length];
            palette.add(new PaletteColour(
                    new Lab(
                            Math.max(2, Math.min(98, near[0] + random.nextGaussian() * 14)),
                            near[1] + random.nextGaussian() * 9,
                            near[2] + random.nextGaussian() * 9),
                    i == 0 ? 0.4 : 0.12));
        }
        return palette;
    }
}
