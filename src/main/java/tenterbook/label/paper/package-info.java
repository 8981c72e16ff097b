/**
 * Labels drawn to true size and put on pages: hang tag, care label, exhibition label, alone or several to a sheet.
 *
 * <p>Draws exactly the lines of a {@link tenterbook.label.LabelText} and no others. Start at {@link
 * tenterbook.label.paper.LabelPaper}.
 */
package tenterbook.label.paper;
