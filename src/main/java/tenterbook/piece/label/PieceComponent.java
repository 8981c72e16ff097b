package tenterbook.piece.label;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.material.FibreShare;
import tenterbook.measure.Quantity;
import tenterbook.words.Conventions;
import tenterbook.words.Joined;
import tenterbook.words.Written;

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
        String name, @Nullable ComponentKind kind, List<FibreShare> fibres, Quantity weightShare, Quantity areaShare)
        implements Written {
    public PieceComponent {
        name = name == null ? "" : name.strip();
        fibres = fibres == null ? List.of() : List.copyOf(fibres);
        weightShare = weightShare == null ? Quantity.UNRECORDED : weightShare;
        areaShare = areaShare == null ? Quantity.UNRECORDED : areaShare;
    }

    /** As in 'silk fringe (100 % silk)'. */
    @Override
    public String in(Conventions conventions) {
        return fibres.isEmpty() ? name : name + " (" + new Joined(", ", fibres).in(conventions) + ")";
    }
}
