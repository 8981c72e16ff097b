/**
 * Labels drawn to true size and put on pages: hang tag, care label, exhibition label, alone or several to a sheet.
 *
 * <p>Draws exactly the lines of a {@link tenterbook.labelling.LabelText} and no others. Start at {@link
 * tenterbook.labelling.paper.LabelPaper}.
 */
package tenterbook.labelling.paper;
