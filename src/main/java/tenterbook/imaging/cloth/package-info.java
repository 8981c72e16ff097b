/**
 * Where the cloth is in a photograph, found from the picture alone, and why it was not found where it was not. A doubtful
 * outline is no outline. Start with {@link tenterbook.imaging.cloth.ClothFinder}.
 */
@NullMarked
package tenterbook.imaging.cloth;

import org.jspecify.annotations.NullMarked;
