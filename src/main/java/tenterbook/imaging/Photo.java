package tenterbook.imaging;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.measure.Digest;

/**
 * What is known of one photograph. Text is empty and numbers are null where they are not known.
 *
 * @param digest SHA-256 of the original, and its name
 * @param originalName the file's name when it was added, for finding it again; never used as a path
 * @param bytes length of the original
 * @param mediaType such as {@code image/jpeg}, from the bytes
 * @param width pixels, upright
 * @param height pixels, upright
 * @param orientation EXIF orientation of the stored picture, 1 to 8
 * @param taken the camera's local time, with its offset from UTC where the file gives one
 * @param camera maker and model
 * @param lens lens model
 * @param iccProfile name of the embedded colour profile
 * @param gps whether the original holds coordinates; previews and shared copies never do
 * @param viewable whether previews can be made
 * @param notes what a person should know, each in a sentence
 * @param palette main colours of the whole picture, background included; empty if it cannot be shown
 * @param calibration how far its colours can be trusted; {@link #UNCALIBRATED} until a grey card says otherwise
 * @param cloth outline of the cloth as a person drew it, on the upright picture; empty where nobody did
 */
public record Photo(
        Digest digest,
        String originalName,
        long bytes,
        String mediaType,
        @Nullable Integer width,
        @Nullable Integer height,
        int orientation,
        String taken,
        String camera,
        String lens,
        String iccProfile,
        boolean gps,
        boolean viewable,
        List<String> notes,
        List<PaletteColour> palette,
        String calibration,
        List<Corner> cloth) {
    /** Colours as the camera gave them: light and white balance are not accounted for. */
    public static final String UNCALIBRATED = "uncalibrated";

    public Photo {
        Objects.requireNonNull(digest, "digest");
        originalName = originalName == null ? "" : originalName;
        mediaType = mediaType == null ? "" : mediaType;
        taken = taken == null ? "" : taken;
        camera = camera == null ? "" : camera;
        lens = lens == null ? "" : lens;
        iccProfile = iccProfile == null ? "" : iccProfile;
        calibration = calibration == null || calibration.isBlank() ? UNCALIBRATED : calibration;
        notes = notes == null ? List.of() : List.copyOf(notes);
        palette = palette == null ? List.of() : List.copyOf(palette);
        cloth = cloth == null || cloth.isEmpty() ? List.of() : new Region(cloth).corners();
    }

    /** The same with another outline drawn; with the program's own where it is empty. */
    public Photo withCloth(List<Corner> outline) {
        return new Photo(
                digest,
                originalName,
                bytes,
                mediaType,
                width,
                height,
                orientation,
                taken,
                camera,
                lens,
                iccProfile,
                gps,
                viewable,
                notes,
                palette,
                calibration,
                outline);
    }
}
