/**
 * What a search found, in other views than the drying lines: as a list, a table with chosen columns or a plot; pieces ticked in any of
 * them, compared side by side; and everything found as a file. {@link tenterbook.web.found.Columns} says what can be asked of a piece.
 */
package tenterbook.web.found;
