/**
 * Many photographs at once: from a folder of this computer or from a browser, several at a time, one bad file spoiling none.
 *
 * <p>What is taken in waits for a piece. No photograph is given to a piece here: numbers found in file names are proposed and
 * nothing more. Start reading at {@link tenterbook.archive.arrival.Arrivals}.
 */
package tenterbook.archive.arrival;
