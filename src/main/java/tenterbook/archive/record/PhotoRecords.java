package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.LAB;

import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;

/** A photograph's file and the correction of its colours. Both are computed, never typed. */
public final class PhotoRecords {
    private static final Part<PaletteColour> PALETTE_COLOUR = Part.<PaletteColour>of("palette-colour")
            .field("colour", LAB, PaletteColour::colour)
            .required()
            .field("share", Numeric.DECIMAL, PaletteColour::share)
            .required()
            .built(v -> new PaletteColour(v.get("colour"), v.get("share", 0.0)));

    private static final Part<Corner> CORNER = Part.<Corner>of("card-corner")
            .field("x", Numeric.DECIMAL, Corner::x)
            .required()
            .field("y", Numeric.DECIMAL, Corner::y)
            .required()
            .built(v -> new Corner(v.get("x", 0.0), v.get("y", 0.0)));

    public static final Part<Photo> PHOTO = Part.<Photo>of("photo")
            .field("digest", Plain.DIGEST, Photo::digest)
            .required()
            .text("originalName", Photo::originalName)
            .personal()
            .field("bytes", Numeric.LONG, Photo::bytes)
            .text("mediaType", Photo::mediaType)
            .field("width", Numeric.WHOLE, Photo::width)
            .field("height", Numeric.WHOLE, Photo::height)
            .field("orientation", Numeric.WHOLE, Photo::orientation)
            .text("taken", Photo::taken)
            .text("camera", Photo::camera)
            .text("lens", Photo::lens)
            .text("iccProfile", Photo::iccProfile)
            .field("gps", Flag.JUDGED, Photo::gps)
            .field("viewable", Flag.JUDGED, Photo::viewable)
            .list("notes", Plain.TEXT, Photo::notes)
            .personal()
            .list("palette", PALETTE_COLOUR, Photo::palette)
            .text("calibration", Photo::calibration)
            .list("cloth", CORNER, Photo::cloth)
            .built(v -> new Photo(
                    v.get("digest"),
                    v.get("originalName"),
                    v.get("bytes", 0L),
                    v.get("mediaType"),
                    v.get("width"),
                    v.get("height"),
                    v.get("orientation", 0),
                    v.get("taken"),
                    v.get("camera"),
                    v.get("lens"),
                    v.get("iccProfile"),
                    v.get("gps", false),
                    v.get("viewable", false),
                    v.get("notes"),
                    v.get("palette"),
                    v.get("calibration"),
                    v.get("cloth")));

    private static final Part<PhotoCalibration.MarkedCard> CARD = Part.<PhotoCalibration.MarkedCard>of("marked-card")
            .list("corners", CORNER, PhotoCalibration.MarkedCard::corners)
            .text("name", PhotoCalibration.MarkedCard::name)
            .field("known", LAB, PhotoCalibration.MarkedCard::known)
            .built(v -> new PhotoCalibration.MarkedCard(
                    v.get("corners", java.util.List.of()), v.get("name", ""), v.get("known")));

    public static final Part<PhotoCalibration> CALIBRATION = Part.<PhotoCalibration>of("calibration")
            .field("photo", Plain.DIGEST, PhotoCalibration::photo)
            .required()
            .choice("how", StoredCodes.CALIBRATION, PhotoCalibration::how)
            .list("cards", CARD, PhotoCalibration::cards)
            .list("matrix", Numeric.DECIMAL, PhotoCalibration::matrix)
            .list("offset", Numeric.DECIMAL, PhotoCalibration::offset)
            .field("tone", Numeric.DECIMAL, PhotoCalibration::tone)
            .field("likelyError", Numeric.DECIMAL, PhotoCalibration::likelyError)
            .field("halfError", Numeric.DECIMAL, PhotoCalibration::halfError)
            .field("profile", Plain.DIGEST, PhotoCalibration::profile)
            .text("note", PhotoCalibration::note)
            .personal()
            .field("at", Plain.INSTANT, PhotoCalibration::at)
            .text("by", PhotoCalibration::by)
            .personal()
            .built(v -> new PhotoCalibration(
                    v.get("photo"),
                    v.get("how"),
                    v.get("cards", java.util.List.of()),
                    v.get("matrix", java.util.List.of()),
                    v.get("offset", java.util.List.of()),
                    v.get("tone"),
                    v.get("likelyError"),
                    v.get("halfError"),
                    v.get("profile"),
                    v.get("note"),
                    v.get("at"),
                    v.get("by")));

    private PhotoRecords() {}
}
