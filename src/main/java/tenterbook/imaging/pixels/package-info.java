/** Decoding, turning, reducing and encoding pictures: upright sRGB pixels. */
package tenterbook.imaging.pixels;
