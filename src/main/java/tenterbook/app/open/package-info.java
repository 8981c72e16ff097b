/**
 * What {@code open} adds to serving: where the archive is kept and who chose it, the copy of the program that runs already, and the
 * browser. Never opens an archive itself. Start at {@link tenterbook.app.open.ArchivePlace}.
 */
package tenterbook.app.open;
