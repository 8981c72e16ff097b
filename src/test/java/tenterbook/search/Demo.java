package tenterbook.search;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
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
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.DateText;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
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
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.Facet;
import tenterbook.search.query.PieceQuery;

/** A small invented studio in a real archive folder, and short ways to say what is in it. */
public final class Demo {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2024-06-01T12:00:00Z"), ZoneOffset.UTC);

    private Demo() {}

    public static Archive archive(Path folder) {
        return Archive.open(folder, CLOCK);
    }

    public static <T> void save(Archive archive, Kind<T> kind, T record) {
        archive.ledger().write("Inês", act -> {
            String id = kind.id().apply(record);
            int version = archive.ledger().history(kind.key(id)).stream()
                    .mapToInt(r -> r.version())
                    .max()
                    .orElse(0);
            return act.save(kind, record, version, "");
        });
    }

    public static void change(Archive archive, String number, UnaryOperator<Piece> change) {
        save(archive, Kinds.PIECE, change.apply(archive.piece(number).orElseThrow()));
    }

    public static void withdraw(Archive archive, Kind<?> kind, String id) {
        int version = archive.ledger().find(kind, id).map(Saved::version).orElseThrow();
        archive.ledger().write("Inês", act -> {
            act.withdraw(kind, id, version, "");
            return null;
        });
    }

    public static BoardPair board(String id, String image, String wood, String... states) {
        List<BoardState> all = java.util.stream.Stream.of(states)
                .map(name -> new BoardState(name, null, "recut the beak", null, null, null))
                .toList();
        return new BoardPair(new BoardId(id), image, wood, null, null, null, null, "shelf 2", all, "");
    }

    public static Cloth cloth(String id, String name, String fibre) {
        return new Cloth(
                new ClothId(id),
                name,
                List.of(new FibreShare(fibre, 100.0, "")),
                "",
                null,
                null,
                "",
                "bolt-77",
                "",
                "",
                null,
                null,
                null,
                "");
    }

    public static Lot lot(String id, Role role, String name, String latin) {
        return new Lot(
                new LotId(id),
                role,
                name,
                Source.BOTANICAL,
                latin,
                "",
                "",
                "harvest-9",
                "",
                null,
                null,
                null,
                "",
                null);
    }

    public static Clamping clamping(
            String id, String board, String state, String cloth, String dips, String lesson, String... lots) {
        List<Charge> charges = java.util.stream.Stream.of(lots)
                .map(lot -> new Charge(new LotId(lot), null, null))
                .toList();
        Step bath = new Step(StepKind.BATH, null, charges, null, null, null, null, null, "", null, null, "");
        Step series = new Step(
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
                new DipSeries(QuantityText.read(dips, Unit.COUNT), null, null, null),
                "");
        return new Clamping(
                new ClampingId(id),
                "",
                null,
                List.of(new BoardUse(new BoardId(board), state)),
                null,
                List.of(new Cut(new ClothId(cloth), null, null, null, null)),
                dips == null ? List.of(bath) : List.of(bath, series),
                null,
                "four screws",
                "rain, 28 ppm",
                lesson,
                "",
                null,
                null,
                null,
                null);
    }

    /** A piece in every field a search looks at. */
    public static Piece piece(
            String number, String title, String clamping, Status status, String finished, Fault... faults) {
        return new Piece(
                new PieceNumber(number),
                title,
                "",
                Category.SCARF,
                QuantityText.read("180 cm", Unit.CENTIMETRE),
                QuantityText.read("45 cm", Unit.CENTIMETRE),
                null,
                DateText.read(finished),
                "",
                clamping == null ? List.of() : List.of(new MadeIn(new ClampingId(clamping), null, "")),
                status,
                null,
                "",
                Money.read("180", Currency.getInstance("EUR")),
                "",
                null,
                List.of(faults),
                null,
                null,
                "",
                null);
    }

    public static Piece measured(Piece p, Quantity length) {
        return new Piece(
                p.number(),
                p.title(),
                p.otherTitle(),
                p.category(),
                length,
                p.width(),
                p.mass(),
                p.finished(),
                p.edition(),
                p.made(),
                p.status(),
                p.holder(),
                p.place(),
                p.price(),
                p.trims(),
                p.photos(),
                p.faults(),
                p.tests(),
                p.events(),
                p.notes(),
                null);
    }

    public static Piece titled(Piece p, String title, String other, String notes) {
        return new Piece(
                p.number(),
                title,
                other,
                p.category(),
                p.length(),
                p.width(),
                p.mass(),
                p.finished(),
                p.edition(),
                p.made(),
                p.status(),
                p.holder(),
                p.place(),
                p.price(),
                p.trims(),
                p.photos(),
                p.faults(),
                p.tests(),
                p.events(),
                notes,
                null);
    }

    public static Piece at(Piece p, String holder, String place) {
        return new Piece(
                p.number(),
                p.title(),
                p.otherTitle(),
                p.category(),
                p.length(),
                p.width(),
                p.mass(),
                p.finished(),
                p.edition(),
                p.made(),
                p.status(),
                new PartyId(holder),
                place,
                p.price(),
                p.trims(),
                p.photos(),
                p.faults(),
                p.tests(),
                p.events(),
                p.notes(),
                null);
    }

    public static Photo photo(String seed, List<PaletteColour> palette) {
        Digest digest = Digest.of(seed.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        return new Photo(
                digest,
                seed + ".jpg",
                1000,
                "image/jpeg",
                400,
                300,
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
                List.of());
    }

    /** Keeps a photograph that shows nothing but cloth, of the colours of its palette. */
    public static void allCloth(Archive archive, Photo photo) {
        archive.cloths()
                .keep(
                        photo.digest(),
                        List.of(),
                        new SeenCloth(
                                new ClothOutline(Edge.FILLS_THE_PICTURE, Region.WHOLE.corners(), 1), photo.palette()));
    }

    public static PiecePhoto front(Photo photo, String caption, int state, ColourRegion... regions) {
        return new PiecePhoto(photo.digest(), PhotoRole.FRONT, caption, state, List.of(regions));
    }

    public static ColourRegion ground(Lab colour, Double share) {
        return new ColourRegion(ColourRole.GROUND, "", colour, share, null, false);
    }

    /** Boards B01 to B03, five pieces, a gallery. */
    public static void fill(Archive archive) {
        save(archive, Kinds.BOARD_PAIR, board("B01", "Fig and wasp", "pear", "I"));
        save(archive, Kinds.BOARD_PAIR, board("B02", "Heron weir", "sycamore", "I", "II"));
        save(archive, Kinds.BOARD_PAIR, board("B03", "Nine swifts", "wild cherry", "I"));
        save(archive, Kinds.CLOTH, cloth("SH", "silk habotai", "silk"));
        save(archive, Kinds.CLOTH, cloth("LV", "linen voile", "linen"));
        save(archive, Kinds.LOT, lot("weld-1", Role.DYE, "weld", "Reseda luteola"));
        save(archive, Kinds.LOT, lot("lac-1", Role.DYE, "lac extract", "Kerria lacca"));
        save(archive, Kinds.LOT, lot("alum-1", Role.MORDANT, "aluminium acetate", ""));
        save(
                archive,
                Kinds.PARTY,
                new Party(new PartyId("sala-vermia"), "Sala Vermia", "gallery", "secret street", ""));
        save(archive, Kinds.CLAMPING, clamping("C24-001", "B01", "I", "SH", "2", "clean the lands first"));
        save(archive, Kinds.CLAMPING, clamping("C24-002", "B01", "I", "SH", "6-8", "", "lac-1"));
        save(
                archive,
                Kinds.CLAMPING,
                clamping("C24-003", "B02", "I", "LV", "3", "seal the beak before the vat", "alum-1", "weld-1"));
        save(archive, Kinds.CLAMPING, clamping("C24-004", "B02", "II", "LV", "forgot", "", "weld-1"));
        save(archive, Kinds.CLAMPING, clamping("C24-005", "B03", "I", "SH", null, ""));
        save(
                archive,
                Kinds.PIECE,
                titled(
                        piece("V24-001", "", "C24-001", Status.SOLD, "2024-01-15"),
                        "Maré baixa",
                        "板締め絞り",
                        "a kyōkechi study"));
        save(
                archive,
                Kinds.PIECE,
                at(
                        piece("V24-002", "Fig at noon", "C24-002", Status.CONSIGNED, "2024-02"),
                        "sala-vermia",
                        "Porto Sarelho"));
        save(
                archive,
                Kinds.PIECE,
                piece(
                        "V24-003",
                        "Heron weir",
                        "C24-003",
                        Status.ON_LOAN,
                        "2023",
                        new Fault("leak", "at the beak, layer 3", "")));
        save(
                archive,
                Kinds.PIECE,
                piece(
                        "V24-004",
                        "After recutting",
                        "C24-004",
                        Status.IN_STOCK,
                        "forgot",
                        new Fault("Bleed", "", "from the lacquer")));
        save(archive, Kinds.PIECE, piece("V24-010", "Nine swifts", "C24-005", Status.IN_STOCK, "2024-05-20"));
    }

    public static List<String> numbers(SearchResult result) {
        return result.hits().stream().map(hit -> hit.card().number()).toList();
    }

    public static List<String> find(PieceIndex index, String words) {
        return numbers(index.search(PieceQuery.EVERYTHING.withText(words)));
    }

    public static Map<String, Integer> counts(SearchResult result, Facet facet) {
        Map<String, Integer> counts = new java.util.LinkedHashMap<>();
        result.facets().stream()
                .filter(group -> group.name().equals(facet.parameter()))
                .flatMap(group -> group.counts().stream())
                .forEach(count -> counts.put(count.value(), count.count()));
        return counts;
    }
}
