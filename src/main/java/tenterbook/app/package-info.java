/** {@code main}, the commands and the wiring. Nobody knows this room. Start at {@link tenterbook.app.Main}. */
package tenterbook.app;
