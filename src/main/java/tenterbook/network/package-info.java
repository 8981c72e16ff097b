/**
 * Who may reach the program over the local network: the devices that were paired and their rights, the one-time codes that pair
 * them, the computer's own addresses, and the certificates of the connection.
 *
 * <p>Everything is kept in the archive's folder {@code network/}, which only its owner can read. It is no part of the archive: it
 * is never packed and stands in no backup, and whoever restores an archive pairs the devices again. Start at
 * {@link tenterbook.network.Authority} and {@link tenterbook.network.Devices}.
 */
@NullMarked
package tenterbook.network;

import org.jspecify.annotations.NullMarked;
