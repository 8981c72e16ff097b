package tenterbook.labelling.rule;

import java.util.List;
import tenterbook.material.Cloth;
import tenterbook.material.FibreShare;
import tenterbook.piece.label.PieceComponent;

/**
 * One cloth of a piece, with the facts that the rules need.
 *
 * @param part which part of the piece, as in 'panel' or 'lining'; empty where not recorded
 * @param cloth the cloth's name
 * @param content its fibres; empty where not recorded
 * @param wovenIn country where it was woven; empty where not recorded
 */
public record Component(String part, String cloth, List<FibreShare> content, String wovenIn) {
    public Component {
        part = part == null ? "" : part.strip();
        cloth = cloth == null ? "" : cloth.strip();
        content = content == null ? List.of() : List.copyOf(content);
        wovenIn = wovenIn == null ? "" : wovenIn.strip();
    }

    /** A cloth without a named part of the piece. */
    public static Component of(Cloth cloth) {
        return of("", cloth);
    }

    public static Component of(String part, Cloth cloth) {
        String name = cloth.name().isEmpty() ? cloth.id().value() : cloth.name();
        return new Component(
                part, name, cloth.content().stream().map(Component::printed).toList(), cloth.wovenIn());
    }

    /** A part of the piece besides its cloth. */
    public static Component of(PieceComponent part) {
        return new Component(
                part.name(),
                part.name(),
                part.fibres().stream().map(Component::printed).toList(),
                "");
    }

    /** The same as a named part. */
    Component as(String name) {
        return new Component(name, cloth, content, wovenIn);
    }

    /** A share that a laboratory measured stands in place of the declared one, unless that is within the tolerance. */
    private static FibreShare printed(FibreShare share) {
        return share.measured() == null || share.agrees()
                ? share
                : new FibreShare(share.fibre(), share.measured(), share.purpose(), share.evidence(), share.measured());
    }

    /** Its name where there are several components. */
    String label() {
        return part.isEmpty() ? cloth : part;
    }
}
