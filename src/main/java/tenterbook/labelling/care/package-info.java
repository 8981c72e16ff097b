/**
 * Care of a piece, from evidence: what its recorded tests allow, forbid and leave open, in words and in symbols.
 *
 * <p>Nothing is offered that no fitting test of the piece passed, and nothing is inferred from one treatment to another. What is
 * commonly held of fibres, dyes and mordants is data under {@code /label}; it is asked about, and limits a test that shows
 * colour alone, but is never printed by itself. Start at {@link tenterbook.labelling.care.CareWords}.
 */
package tenterbook.labelling.care;
