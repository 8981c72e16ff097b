/**
 * How one dyeing is told: the clamping with its boards, fold scheme, cuts of cloth and steps, the layer map that follows
 * from the folds, and the figures that follow from the quantities. Facts and arithmetic; no I/O. Start at
 * {@link tenterbook.recipe.Clamping}, {@link tenterbook.recipe.LayerMap} and {@link tenterbook.recipe.RecipeFigures}.
 */
@NullMarked
package tenterbook.recipe;

import org.jspecify.annotations.NullMarked;
