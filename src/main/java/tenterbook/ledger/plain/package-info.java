/** Plain tables beside the ledger: what is no fact about a piece and is changed freely. */
package tenterbook.ledger.plain;
