/**
 * Adds many photographs at once, from a folder of this computer or from a browser; a bad file does not affect the others.
 *
 * <p>Added photographs wait to be assigned to a piece. Numbers found in file names are only proposed. Start reading at {@link
 * tenterbook.archive.arrival.Arrivals}.
 */
package tenterbook.archive.arrival;
