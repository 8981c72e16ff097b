/**
 * How depth of shade grows with the dips in a vat, learned from finished pieces of one cloth: the curves that they allow, how
 * many dips gave a depth and how many more are needed, each with its uncertainty. Also the one rule by which dips are counted.
 *
 * <p>Pure arithmetic; the same points always give the same answer. It answers with a sentence instead of a number where the
 * pieces are too few or do not get deeper. A curve describes one cloth in one studio's vat and says nothing of others.
 *
 * <p>Start at {@link tenterbook.recipe.dip.DipFit}, then {@link tenterbook.recipe.dip.FittedDips}; dips are counted by {@link
 * tenterbook.recipe.dip.DipTally}.
 */
@NullMarked
package tenterbook.recipe.dip;

import org.jspecify.annotations.NullMarked;
