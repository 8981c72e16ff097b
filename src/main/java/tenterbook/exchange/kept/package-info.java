/**
 * Photographs and papers under their digests, as an archive, a bag and a backup hold them, and folders that appear whole or not
 * at all. Start at {@link tenterbook.exchange.kept.KeptFolder}.
 */
package tenterbook.exchange.kept;
