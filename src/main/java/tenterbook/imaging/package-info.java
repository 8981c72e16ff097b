/**
 * Photographs: originals kept byte for byte under their SHA-256, what their metadata says, previews, and the colours
 * measured from them.
 *
 * <p>An original is never changed, and is in place under its final name only when it is whole and synced. Previews may be
 * deleted at any time. Coordinates are noticed but never read out, and no preview or shared copy carries metadata. A
 * damaged tag is noted beside the photograph; it does not lose it. Colours from an uncalibrated photograph say so.
 *
 * <p>Start with {@link tenterbook.imaging.PhotoIntake}.
 */
package tenterbook.imaging;
