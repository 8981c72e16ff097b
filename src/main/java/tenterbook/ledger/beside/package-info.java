/** What is kept in plain tables beside the ledger, since it is no fact about a piece: it has no revisions and is no part of the chain. */
package tenterbook.ledger.beside;
