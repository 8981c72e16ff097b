/**
 * Export and import of an archive as a bag (RFC 8493) that opens with no software of ours, and the check of an archive.
 *
 * <p>Promises: a bag or a restored archive appears whole under its name or not at all, also when the process is killed (tested
 * by killing one; a power cut is trusted to the disk); everything wrong is reported at once; nothing is fetched from anywhere.
 * Start at {@link tenterbook.exchange.Pack} and {@link tenterbook.exchange.Restore}.
 */
package tenterbook.exchange;
