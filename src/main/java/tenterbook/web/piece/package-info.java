/** Pieces: finding them, showing, recording and changing one, by page and over HTTP. */
package tenterbook.web.piece;
