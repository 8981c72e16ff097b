package tenterbook.imaging.file;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.GpsDirectory;
import com.drew.metadata.heif.HeifDirectory;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.jpeg.JpegDirectory;
import com.drew.metadata.png.PngDirectory;
import com.drew.metadata.webp.WebpDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Message;

/** Reads {@link PhotoFacts} from a file; damaged metadata ends up in the warnings and never stops the reading. */
public final class PhotoFactsReader {
    private static final DateTimeFormatter EXIF_TIME = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss");
    private static final int LONGEST = 200;

    private final Metadata metadata;
    /** Of a HEIC or AVIF file: it alone tells the whole picture from its tiles. */
    private final Optional<HeifHead> heif;

    private final List<String> warnings = new ArrayList<>();

    private PhotoFactsReader(Metadata metadata, Optional<HeifHead> heif) {
        this.metadata = metadata;
        this.heif = heif;
    }

    /** @throws IOException if the file cannot be read at all */
    public static PhotoFacts read(Path file) throws IOException {
        Metadata metadata = new Metadata();
        String fault = null;
        try {
            metadata = ImageMetadataReader.readMetadata(file.toFile());
        } catch (ImageProcessingException | RuntimeException e) {
            fault = Message.of("photo.metadata-unread", "why", String.valueOf(e.getMessage()))
                    .inEnglish();
        }
        PhotoFactsReader reader = new PhotoFactsReader(
                metadata,
                metadata.containsDirectoryOfType(HeifDirectory.class) ? HeifHead.read(file) : Optional.empty());
        if (fault != null) {
            reader.warnings.add(fault);
        }
        return reader.facts();
    }

    private PhotoFacts facts() {
        for (Directory directory : metadata.getDirectories()) {
            for (String error : directory.getErrors()) {
                warn(Message.of("photo.metadata-damaged", "part", directory.getName(), "fault", error));
            }
        }
        String[] taken = taken();
        String iccProfile = described(IccDirectory.class, IccDirectory.TAG_TAG_desc);
        Integer spaceCode = number(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_COLOR_SPACE);
        if (spaceCode != null && spaceCode != 1 && iccProfile == null) {
            warn(Message.of("photo.profile-missing"));
        }
        return new PhotoFacts(
                heif.isPresent()
                        ? side(heif.get().width())
                        : side(
                                JpegDirectory.TAG_IMAGE_WIDTH,
                                PngDirectory.TAG_IMAGE_WIDTH,
                                WebpDirectory.TAG_IMAGE_WIDTH,
                                HeifDirectory.TAG_IMAGE_WIDTH,
                                ExifDirectoryBase.TAG_IMAGE_WIDTH),
                heif.isPresent()
                        ? side(heif.get().height())
                        : side(
                                JpegDirectory.TAG_IMAGE_HEIGHT,
                                PngDirectory.TAG_IMAGE_HEIGHT,
                                WebpDirectory.TAG_IMAGE_HEIGHT,
                                HeifDirectory.TAG_IMAGE_HEIGHT,
                                ExifDirectoryBase.TAG_IMAGE_HEIGHT),
                orientation(),
                taken[0],
                taken[1],
                camera(),
                described(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_LENS_MODEL),
                iccProfile,
                hasGps(),
                warnings);
    }

    private static Integer side(long claimed) {
        return (int) Math.min(claimed, Integer.MAX_VALUE);
    }

    private Integer side(int jpeg, int png, int webp, int boxed, int exif) {
        Integer found = number(JpegDirectory.class, jpeg);
        found = found != null ? found : number(PngDirectory.class, png);
        found = found != null ? found : number(WebpDirectory.class, webp);
        if (metadata.containsDirectoryOfType(HeifDirectory.class)) {
            return number(HeifDirectory.class, boxed);
        }
        return found != null ? found : number(ExifIFD0Directory.class, exif);
    }

    /**
     * HEIF turns pictures by its own box, anticlockwise in quarter turns (ISO/IEC 23008-12, irot), and calls the EXIF tag
     * informative only; so the box decides there.
     */
    private int orientation() {
        if (heif.isPresent()) {
            return heif.get().orientation();
        }
        if (metadata.containsDirectoryOfType(HeifDirectory.class)) {
            Integer turn = number(HeifDirectory.class, HeifDirectory.TAG_IMAGE_ROTATION);
            return switch (turn == null ? 0 : turn) {
                case 90 -> 8;
                case 180 -> 3;
                case 270 -> 6;
                default -> 1;
            };
        }
        Integer found = number(ExifIFD0Directory.class, ExifDirectoryBase.TAG_ORIENTATION);
        if (found != null && (found < 1 || found > 8)) {
            warn(Message.of("photo.orientation-unread", "found", found));
            return 1;
        }
        return found == null ? 1 : found;
    }

    private String[] taken() {
        String found = text(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_DATETIME_ORIGINAL);
        // Cameras whose clock was never set write zeros or blanks: that is "unknown", not damage.
        if (found == null || !found.matches(".*[1-9].*")) {
            return new String[] {null, null};
        }
        try {
            String local = LocalDateTime.parse(found, EXIF_TIME).format(DateTimeFormatter.ISO_LOCAL_DATE_TIME);
            return new String[] {local, offset()};
        } catch (DateTimeException e) {
            warn(Message.of("photo.time-unread", "found", found));
            return new String[] {null, null};
        }
    }

    private String offset() {
        String found = text(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL);
        if (found == null) {
            return null;
        }
        try {
            return ZoneOffset.of(found).getTotalSeconds() == 0 ? "+00:00" : found;
        } catch (DateTimeException e) {
            warn(Message.of("photo.offset-unread", "found", found));
            return null;
        }
    }

    /** In English, as it is kept in the record. */
    private void warn(Message warning) {
        warnings.add(warning.inEnglish());
    }

    private String camera() {
        String make = text(ExifIFD0Directory.class, ExifDirectoryBase.TAG_MAKE);
        String model = text(ExifIFD0Directory.class, ExifDirectoryBase.TAG_MODEL);
        if (make == null || model == null) {
            return make == null ? model : make;
        }
        return model.startsWith(make) ? model : make + " " + model;
    }

    private boolean hasGps() {
        for (GpsDirectory gps : metadata.getDirectoriesOfType(GpsDirectory.class)) {
            if (gps.containsTag(GpsDirectory.TAG_LATITUDE) || gps.containsTag(GpsDirectory.TAG_LONGITUDE)) {
                return true;
            }
        }
        return metadata.getDirectoriesOfType(XmpDirectory.class).stream()
                .flatMap(xmp -> xmp.getXmpProperties().keySet().stream())
                .anyMatch(key -> key.contains("GPSLatitude") || key.contains("GPSLongitude"));
    }

    /** From the first directory of the kind that holds the tag: HEIF files come as one directory per box. */
    private <D extends Directory> Integer number(Class<D> kind, int tag) {
        return metadata.getDirectoriesOfType(kind).stream()
                .filter(directory -> directory.containsTag(tag))
                .findFirst()
                .map(directory -> directory.getInteger(tag))
                .orElse(null);
    }

    private <D extends Directory> String text(Class<D> kind, int tag) {
        D directory = metadata.getFirstDirectoryOfType(kind);
        return directory == null ? null : cleaned(directory.getString(tag));
    }

    private <D extends Directory> String described(Class<D> kind, int tag) {
        D directory = metadata.getFirstDirectoryOfType(kind);
        return directory == null ? null : cleaned(directory.getDescription(tag));
    }

    private static String cleaned(String text) {
        if (text == null) {
            return null;
        }
        String clean = text.replaceAll("\\p{Cntrl}", " ").strip();
        return clean.isEmpty() ? null : clean.substring(0, Math.min(clean.length(), LONGEST));
    }
}
