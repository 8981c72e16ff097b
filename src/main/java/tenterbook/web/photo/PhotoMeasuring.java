package tenterbook.web.photo;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.ClothArea;
import tenterbook.colour.palette.ClothAreaProposal;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/** Measures colours on photographs: from the original, by the photograph's calibration where it has one. */
public final class PhotoMeasuring {
    private final Site site;
    private final PhotoMeasure photos;

    public PhotoMeasuring(Site site) {
        this.site = site;
        this.photos = new PhotoMeasure(site.originals());
    }

    /** The picture's pixels, upright and in sRGB. */
    Pixels open(Digest photo) throws IOException {
        return photos.open(photo)
                .map(PhotoMeasure.Opened::pixels)
                .orElseThrow(() -> new NotFound(Message.of("not-here.picture-to-measure", "name", photo.brief())));
    }

    Optional<PhotoCalibration> calibration(Digest photo) {
        return site.archive().ledger().find(Kinds.CALIBRATION, photo.hex()).map(Saved::record);
    }

    Correction correction(Digest photo) {
        return calibration(photo).map(PhotoCalibration::correction).orElse(Correction.NONE);
    }

    /** The colour of a part of the picture, as a piece's record keeps it. */
    ColourRegion region(Digest photo, ColourRole role, String name, Region part, Double share) throws IOException {
        MeasuredColour found = correction(photo).measure(open(photo), part, WhitePoint.D65);
        List<ColourRegion.Corner> corners = part.corners().stream()
                .map(corner -> new ColourRegion.Corner(corner.x(), corner.y()))
                .toList();
        return new ColourRegion(
                role,
                name,
                found.lab(),
                share,
                corners,
                found.likelyError() != null,
                found.spread(),
                found.pixels(),
                found.likelyError());
    }

    /**
     * The colour of a small disc about a place, {@link Region#disc}.
     *
     * @param across part of the picture's width, 0 to 1
     * @param down part of its height
     */
    MeasuredColour place(Digest photo, double across, double down) throws IOException {
        Pixels picture = open(photo);
        return correction(photo)
                .measure(picture, Region.disc(across, down, picture.width(), picture.height()), WhitePoint.D65);
    }

    /** Ground, resist and local colours of what is outlined; the card, where one is marked, is left out. */
    List<ClothArea> proposals(Digest photo, Region outline) throws IOException {
        List<Region> cards = calibration(photo)
                .map(calibration -> calibration.cards().stream()
                        .map(card -> new Region(card.corners()))
                        .toList())
                .orElse(List.of());
        return ClothAreaProposal.find(open(photo), outline, cards);
    }
}
