/**
 * A new archive from whatever is left of one. Never writes where it reads from. Start at {@link
 * tenterbook.exchange.rescue.Rescue}.
 */
package tenterbook.exchange.rescue;
