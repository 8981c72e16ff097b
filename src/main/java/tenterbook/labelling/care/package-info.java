/**
 * Care of a piece, from evidence: what its recorded tests allow, forbid and leave open, in words and in symbols.
 *
 * <p>A treatment is offered only where a relevant test passed, and nothing is inferred from one treatment to another. Common
 * practice for fibres, dyes and mordants is data under {@code /label}; it is asked about, and limits a test of colour alone,
 * but is never printed by itself. Start at {@link tenterbook.labelling.care.CareWords}.
 */
package tenterbook.labelling.care;
