package tenterbook.labelling;

import java.util.List;
import java.util.stream.Stream;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.care.CareCase;
import tenterbook.labelling.care.CareCase.Of;
import tenterbook.material.Cloth;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Piece;
import tenterbook.piece.label.PieceComponent;
import tenterbook.recipe.Clamping;

/** The records of a piece that affect its care. */
public final class CareFacts {
    private CareFacts() {}

    public static CareCase of(PieceFacts facts) {
        Piece piece = facts.piece();
        List<Cloth> cloths = facts.cloth().cloths();
        PartialDate lastDyed = facts.clampings().stream()
                .map(Clamping::when)
                .reduce((earlier, later) -> later)
                .orElse(PartialDate.UNRECORDED);
        return new CareCase(piece.category(), piece.tests(), null, lastDyed)
                .with(
                        Of.FIBRE,
                        Stream.concat(
                                        cloths.stream().flatMap(c -> c.content().stream()),
                                        piece.label().components().stream().flatMap(part -> part.fibres().stream()))
                                .map(FibreShare::fibre)
                                .toList())
                .with(Of.DYE, lots(facts, Role.DYE))
                .with(Of.MORDANT, lots(facts, Role.MORDANT))
                .with(
                        Of.FINISH,
                        Stream.concat(cloths.stream().map(Cloth::finish), lots(facts, Role.ASSISTANT).stream())
                                .toList())
                .with(
                        Of.CONSTRUCTION,
                        cloths.stream().map(c -> c.name() + " " + c.weave()).toList())
                .with(
                        Of.TRIM,
                        Stream.concat(
                                        Stream.of(piece.trims()),
                                        piece.label().components().stream().map(PieceComponent::name))
                                .toList());
    }

    private static List<String> lots(PieceFacts facts, Role role) {
        return facts.lotsUsed(role).map(Lot::name).toList();
    }
}
