package tenterbook.sample;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.CardReading;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;

/**
 * One evening at the year's end the maker goes through photographs of woad blues, lets the program find the grey card in each,
 * and measures the named colours again by it. What was read before stays in the history.
 */
final class SampleCalibrations {
    private static final String MAKER = "Inês Valderim";
    private static final Instant EVENING = Instant.parse("2024-12-14T19:30:00Z");
    private static final Duration EACH = Duration.ofMinutes(2);
    private static final List<String> PIECES = List.of(
            "V24-001", "V24-002", "V24-003", "V24-006", "V24-007", "V24-008", "V24-009", "V24-020", "V24-021",
            "V24-022", "V24-023");

    private final Archive archive;
    private final SampleClock clock;
    private final PhotoMeasure measure;

    SampleCalibrations(Archive archive, SampleClock clock, Originals originals) {
        this.archive = archive;
        this.clock = clock;
        this.measure = new PhotoMeasure(originals);
    }

    void run() {
        Instant at = EVENING;
        for (String number : PIECES) {
            clock.set(at);
            measureAgain(number);
            at = at.plus(EACH);
        }
    }

    private void measureAgain(String number) {
        Saved<Piece> saved = archive.ledger().find(Kinds.PIECE, number).orElseThrow();
        List<PhotoCalibration> calibrations = new ArrayList<>();
        List<PiecePhoto> photos = saved.record().photos().stream()
                .map(photo -> photo.regions().isEmpty() ? photo : measured(photo, calibrations))
                .toList();
        archive.ledger().write(MAKER, act -> {
            calibrations.forEach(calibration -> act.create(Kinds.CALIBRATION, calibration));
            return act.save(
                    Kinds.PIECE,
                    saved.record().withPhotos(photos),
                    saved.version(),
                    "Colours measured again, by the grey card.");
        });
    }

    private PiecePhoto measured(PiecePhoto photo, List<PhotoCalibration> calibrations) {
        Pixels picture = open(photo.photo());
        CardOutline card = CardFinder.find(picture)
                .orElseThrow(() -> new IllegalStateException("No grey card was found on " + photo.photo()))
                .outline();
        KnownCard known = KnownCard.grey18();
        Correction correction = Correction.byGrey(CardReading.of(picture, card.inner()), known);
        calibrations.add(PhotoCalibration.of(
                photo.photo(),
                correction,
                List.of(PhotoCalibration.MarkedCard.of(card, known)),
                clock.instant(),
                MAKER));
        return photo.withRegions(photo.regions().stream()
                .map(region -> measured(region, picture, correction))
                .toList());
    }

    private static ColourRegion measured(ColourRegion region, Pixels picture, Correction correction) {
        Region part = new Region(region.corners().stream()
                .map(corner -> new Region.Corner(corner.across(), corner.down()))
                .toList());
        MeasuredColour found = correction.measure(picture, part, WhitePoint.D65);
        return new ColourRegion(
                region.role(),
                region.name(),
                found.lab(),
                region.share(),
                region.corners(),
                true,
                found.spread(),
                found.pixels(),
                found.likelyError());
    }

    private Pixels open(Digest photo) {
        try {
            return measure.open(photo).orElseThrow().pixels();
        } catch (IOException e) {
            throw new UncheckedIOException("The sample photograph " + photo + " could not be measured", e);
        }
    }
}
