/** A page of the same libraries without this program, to compare its start with. Start at {@link tenterbook.bench.bare.BarePage}. */
package tenterbook.bench.bare;
