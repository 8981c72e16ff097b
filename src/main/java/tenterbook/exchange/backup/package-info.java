/**
 * Backups on another disk while the program runs: a bag of the ledger for each, photographs and papers once; plain, or encrypted by
 * {@code exchange.openpgp}. Start at {@link tenterbook.exchange.backup.Backup}.
 */
package tenterbook.exchange.backup;
