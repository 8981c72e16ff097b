/**
 * The words of labels and tags, exactly as printed, before they are set.
 *
 * <p>Everything comes in as {@link tenterbook.facts.PieceFacts}; nothing here reads the archive. {@link
 * tenterbook.labelling.LabelText} has the words of a label and is stored when it is issued; {@code labelling.rule} has the
 * rules of markets, {@code labelling.care} care, {@code labelling.paper} draws and prints. A fact that is not recorded is left
 * out or marked as such; a label that a rule forbids is blocked with the reason. {@link tenterbook.labelling.issue.TagTable}
 * has the status of each piece's hang tag; it is derived from the ledger and may be deleted at any time.
 */
package tenterbook.labelling;
