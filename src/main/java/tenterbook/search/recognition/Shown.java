package tenterbook.search.recognition;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.BoardUse;

/**
 * What a photograph is of.
 *
 * @param boards used up to the state shown
 * @param longerSideMm how much cloth lies along the photograph's longer side; null where that is not known
 */
record Shown(PieceNumber piece, int state, List<BoardUse> boards, Supplier<@Nullable Double> longerSideMm) {}
