/**
 * How depth of shade grows with the dips in a vat, learned from finished pieces: the levelling-off curve, its uncertainty, how
 * many dips gave a depth and how many more are needed.
 *
 * <p>Pure arithmetic; the same points always give the same answer. It never mixes readings of two kinds, and answers with a
 * sentence instead of a number where no curve can be fitted. A curve describes one studio's vats and says nothing of others.
 *
 * <p>Start at {@link tenterbook.recipe.dip.DipFit}, then {@link tenterbook.recipe.dip.FittedDips} and {@link
 * tenterbook.recipe.dip.PooledCurves}.
 */
@NullMarked
package tenterbook.recipe.dip;

import org.jspecify.annotations.NullMarked;
