/**
 * The paper that goes with a piece: what is said on it, in exact words, before any of it is set.
 *
 * <p>Everything comes in as {@link tenterbook.facts.PieceFacts}; nothing here reads the archive. {@link
 * tenterbook.labelling.LabelText} is what a label says and is kept when it is issued; {@code label.rule} holds the rules,
 * {@code label.layout} sets type, {@code label.paper} draws and prints. A fact that is not recorded is left out or said to be
 * so; a label a rule forbids is blocked with the reason. {@link tenterbook.labelling.issue.TagTable} keeps how each piece stands with its
 * hang tag; it is derived from the ledger and may be deleted at any time.
 */
package tenterbook.labelling;
