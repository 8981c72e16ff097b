/** The archive laid out by colour, and colour arithmetic over HTTP. */
package tenterbook.web.colour;
