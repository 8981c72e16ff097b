/**
 * Backups on another disk while the program runs: a bag of the ledger for each, photographs and papers once. Start at {@link
 * tenterbook.exchange.backup.Backup}.
 */
package tenterbook.exchange.backup;
