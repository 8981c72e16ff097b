/** Picture decoders installed on this computer, called within bounds of time, memory and output. */
package tenterbook.imaging.decoder;
