package tenterbook.sample;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.board.Hole;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.Unit;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Studio;

/** What the sample studio is and has: itself, its people, its boards, its cloth, its dyes. */
final class SampleThings {
    private SampleThings() {}

    static Studio studio(Entered e) {
        return new Studio(
                e.text("name"),
                e.text("maker"),
                e.text("place"),
                e.text("dyedIn"),
                e.text("contact"),
                e.text("careLine"),
                new NumberScheme(e.text("prefix")),
                Currency.getInstance(e.text("currency")),
                e.text("notice"));
    }

    static Party party(Entered e) {
        return new Party(new PartyId(e.text("id")), e.text("name"), e.text("kind"), e.text("contact"), e.text("notes"));
    }

    static BoardPair board(Entered e) {
        String id = e.text("id");
        return new BoardPair(
                new BoardId(id),
                e.text("image"),
                e.text("wood"),
                e.quantity("length", Unit.MILLIMETRE),
                e.quantity("width", Unit.MILLIMETRE),
                e.quantity("thickness", Unit.MILLIMETRE),
                e.quantity("usualLayers", Unit.COUNT),
                e.text("kept"),
                e.each("states", state -> state(state)),
                e.text("notes"));
    }

    private static BoardState state(Entered e) {
        return new BoardState(
                e.text("name"),
                e.date("since"),
                e.text("change"),
                e.quantity("warp", Unit.MILLIMETRE),
                e.quantity("holeCount", Unit.COUNT),
                holes(Motifs.of(e.text("carving"))));
    }

    /** The carving's own holes, numbered as the photographs' local colour counts them. */
    private static List<Hole> holes(Motif motif) {
        List<Hole> holes = new ArrayList<>();
        for (Motif.Hole hole : motif.holes()) {
            String bore = "%s mm bore".formatted(rounded(2 * hole.radiusMm()));
            holes.add(new Hole(
                    Integer.toString(holes.size() + 1),
                    rounded(hole.x()),
                    rounded(hole.y()),
                    bore.replace(".0 mm", " mm")));
        }
        return holes;
    }

    private static double rounded(double mm) {
        return Math.round(mm * 10) / 10.0;
    }

    static Cloth cloth(Entered e) {
        return new Cloth(
                new ClothId(e.text("id")),
                e.text("name"),
                e.each("content", fibre -> new FibreShare(fibre.text("fibre"), fibre.number("percent"), "")),
                e.text("contentEvidence"),
                e.quantity("arealWeight", Unit.GRAM_PER_SQUARE_METRE),
                e.quantity("width", Unit.CENTIMETRE),
                e.text("weave"),
                e.text("lot"),
                e.text("supplier"),
                e.text("wovenIn"),
                e.date("boughtOn"),
                e.quantity("bought", Unit.METRE),
                e.money("price"),
                e.text("notes"));
    }

    static Lot lot(Entered e) {
        return new Lot(
                new LotId(e.text("id")),
                e.choice("role", Role.values()),
                e.text("name"),
                e.choice("source", Source.values()),
                e.text("organism"),
                e.text("part"),
                e.text("form"),
                e.text("lot"),
                e.text("supplier"),
                e.date("boughtOn"),
                e.quantity("bought", Unit.GRAM),
                e.money("price"),
                e.text("notes"));
    }
}
