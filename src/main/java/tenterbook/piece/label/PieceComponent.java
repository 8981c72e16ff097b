package tenterbook.piece.label;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.material.FibreShare;
import tenterbook.measure.Quantity;

/**
 * A part of a piece besides its cloth.
 *
 * @param name in the maker's words, as in 'silk fringe'
 * @param kind null where not recorded
 * @param fibres empty where not known
 * @param weightShare of the weight of the whole piece, in percent
 * @param areaShare of the outer surface of the whole piece, in percent
 */
public record PieceComponent(
        String name, @Nullable ComponentKind kind, List<FibreShare> fibres, Quantity weightShare, Quantity areaShare) {
    public PieceComponent {
        name = name == null ? "" : name.strip();
        fibres = fibres == null ? List.of() : List.copyOf(fibres);
        weightShare = weightShare == null ? Quantity.UNRECORDED : weightShare;
        areaShare = areaShare == null ? Quantity.UNRECORDED : areaShare;
    }
}
