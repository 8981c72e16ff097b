/**
 * What a piece was found to be like when somebody looked: the examination that goes with it between maker, museum, gallery
 * and carrier, what was seen and where on which photograph, and what has changed since the examination before.
 *
 * <p>What nobody looked at stays 'not checked', and nothing is called gone unless the examiner said so. The parts follow
 * EN 16095:2012, Conservation of cultural property, Condition recording for movable cultural heritage, from memory: the
 * standard itself was not at hand. Facts and their comparison only; no I/O. Start at {@link
 * tenterbook.piece.condition.Examination} and {@link tenterbook.piece.condition.Comparison}.
 */
@NullMarked
package tenterbook.piece.condition;

import org.jspecify.annotations.NullMarked;
