/**
 * OpenPGP (RFC 4880, RFC 9580) as encrypted backups need it: a key pair behind a passphrase, messages to it, and their opening. Any
 * OpenPGP program opens the same files. Knows nothing of archives and keeps no passphrase. Start at {@link
 * tenterbook.exchange.openpgp.BackupKey}.
 */
package tenterbook.exchange.openpgp;
