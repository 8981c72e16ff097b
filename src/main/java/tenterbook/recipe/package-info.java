/**
 * One dyeing: the clamping with its boards, fold scheme, cuts of cloth and steps, the layer map derived from the folds, and the
 * figures derived from the quantities. Facts and arithmetic; no I/O. Start at {@link tenterbook.recipe.Clamping}, {@link
 * tenterbook.recipe.LayerMap} and {@link tenterbook.recipe.RecipeFigures}.
 */
@NullMarked
package tenterbook.recipe;

import org.jspecify.annotations.NullMarked;
