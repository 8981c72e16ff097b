package tenterbook.archive;

import java.util.Comparator;
import java.util.Optional;
import tenterbook.colour.target.Calibration;
import tenterbook.colour.target.CameraProfile;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.Saved;

/**
 * The newest calibration by a chart of a photograph's camera: what profile of a camera there is follows from these records and
 * is kept nowhere else. Cameras are told apart by maker and model as their files give them; two of one model count as one.
 *
 * @param photo the photograph that shows the chart
 */
public record ChartOfCamera(Photo photo, PhotoCalibration calibration) {
    /** Of another photograph by the same camera; empty where there is none, or where the file does not name its camera. */
    public static Optional<ChartOfCamera> of(Ledger ledger, Photo photo) {
        if (photo.camera().isBlank()) {
            return Optional.empty();
        }
        return ledger.all(Kinds.CALIBRATION).stream()
                .map(Saved::record)
                .filter(each -> each.how() == Calibration.CHART && !each.photo().equals(photo.digest()))
                .sorted(Comparator.comparing(PhotoCalibration::at).reversed())
                .flatMap(
                        each -> ledger
                                .find(Kinds.PHOTO, each.photo().hex())
                                .map(shown -> new ChartOfCamera(shown.record(), each))
                                .stream())
                .filter(each ->
                        each.photo.camera().strip().equals(photo.camera().strip()))
                .findFirst();
    }

    public CameraProfile profile() {
        return new CameraProfile(calibration.correction());
    }
}
