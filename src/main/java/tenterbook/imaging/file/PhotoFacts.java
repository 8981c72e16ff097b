package tenterbook.imaging.file;

import java.util.List;

/**
 * The metadata of a picture file. Text and numbers are null where not present: unknown is not zero. Coordinates are noticed and
 * not read. HEIC sizes are those of the coded picture, which may be padded by a few pixels beyond what is shown.
 *
 * @param width stored width in pixels, before turning upright
 * @param height stored height in pixels, before turning upright
 * @param orientation 1 to 8 as in EXIF; 1 if missing or invalid
 * @param takenLocal local time on the camera's clock, {@code 2024-05-17T14:03:22}
 * @param takenOffset offset of that clock from UTC, {@code +01:00}
 * @param camera maker and model
 * @param lens lens model
 * @param iccProfile name of the embedded colour profile
 * @param hasGps whether coordinates are in the file
 * @param warnings damaged or odd metadata, each in a sentence
 */
public record PhotoFacts(
        Integer width,
        Integer height,
        int orientation,
        String takenLocal,
        String takenOffset,
        String camera,
        String lens,
        String iccProfile,
        boolean hasGps,
        List<String> warnings) {
    public PhotoFacts {
        warnings = List.copyOf(warnings);
    }

    /** Whether turning upright swaps width and height. */
    public boolean sideways() {
        return orientation >= 5;
    }

    /** The same of pixels that stand as this orientation says. */
    public PhotoFacts turned(int orientation) {
        return new PhotoFacts(
                width, height, orientation, takenLocal, takenOffset, camera, lens, iccProfile, hasGps, warnings);
    }
}
