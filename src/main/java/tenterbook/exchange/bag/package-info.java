/**
 * BagIt 1.0 (RFC 8493): writing a bag, and finding everything that is wrong with one.
 *
 * <p>Knows nothing of archives. Reads each file once, whatever the number of manifests; never follows a link, never
 * fetches, never builds a path from what a manifest says. Start at {@link tenterbook.exchange.bag.BagCheck}.
 */
package tenterbook.exchange.bag;
