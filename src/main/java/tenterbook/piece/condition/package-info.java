/**
 * Examinations of the condition of a piece, as passed between maker, museum, gallery and carrier: observations, their marks on
 * photographs, and changes since the examination before.
 *
 * <p>What was not examined stays 'not checked', and nothing is called gone unless the examiner recorded it. The parts follow EN
 * 16095:2012, Conservation of cultural property, Condition recording for movable cultural heritage, from memory: the standard
 * itself was not at hand. Facts and their comparison only; no I/O. Start at {@link tenterbook.piece.condition.Examination} and
 * {@link tenterbook.piece.condition.Comparison}.
 */
@NullMarked
package tenterbook.piece.condition;

import org.jspecify.annotations.NullMarked;
