/** Picture files as they arrive: their format, whether they are whole, what their metadata says. */
package tenterbook.imaging.file;
