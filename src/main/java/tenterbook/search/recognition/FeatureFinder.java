package tenterbook.search.recognition;

import boofcv.abst.feature.detdesc.DetectDescribePoint;
import boofcv.abst.feature.detect.interest.ConfigFastHessian;
import boofcv.factory.feature.detdesc.FactoryDetectDescribe;
import boofcv.struct.feature.TupleDesc_F64;
import boofcv.struct.image.GrayF32;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.pixels.RgbPicture;

/** Finds the distinctive places of a picture, at two sizes. The same pixels always give the same. */
final class FeatureFinder {
    /** Another one where the same picture may give others. */
    static final int VERSION = 2;

    /** Long sides in pixels, and how many places of each are kept at most. */
    private static final int[] SIZES = {1024, 400};

    private static final int[] KEPT = {1400, PhotoFeatures.MOST - 1400};

    private FeatureFinder() {}

    static PhotoFeatures of(Pixels picture) {
        PhotoFeatures.Builder found = new PhotoFeatures.Builder(PhotoFeatures.MOST, picture.width(), picture.height());
        RgbPicture from = new RgbPicture(picture.argb(), picture.width(), picture.height());
        for (int size = 0; size < SIZES.length; size++) {
            from = from.within(SIZES[size]);
            add(found, from, KEPT[size]);
        }
        return found.done();
    }

    private static void add(PhotoFeatures.Builder found, RgbPicture picture, int most) {
        DetectDescribePoint<GrayF32, TupleDesc_F64> surf = surf(most);
        surf.detect(grey(picture));
        double longer = Math.max(picture.width(), picture.height());
        int count = Math.min(most, surf.getNumberOfFeatures());
        for (int i = 0; i < count && !found.full(); i++) {
            found.add(
                    surf.getLocation(i).x / longer,
                    surf.getLocation(i).y / longer,
                    surf.getRadius(i) / longer,
                    surf.getOrientation(i),
                    surf.getSet(i) == 1,
                    surf.getDescription(i).data);
        }
    }

    private static DetectDescribePoint<GrayF32, TupleDesc_F64> surf(int most) {
        ConfigFastHessian detect = new ConfigFastHessian();
        detect.extract.threshold = 1;
        detect.extract.radius = 2;
        detect.maxFeaturesPerScale = -1;
        detect.maxFeaturesAll = most;
        detect.initialSampleStep = 1;
        detect.numberOfOctaves = 4;
        return FactoryDetectDescribe.surfStable(detect, null, null, GrayF32.class);
    }

    /** Brightness as it looks, 0 to 255 (weights of ITU-R BT.601). */
    private static GrayF32 grey(RgbPicture picture) {
        GrayF32 grey = new GrayF32(picture.width(), picture.height());
        for (int i = 0; i < grey.data.length; i++) {
            int pixel = picture.argb()[i];
            grey.data[i] = 0.299f * (pixel >> 16 & 0xff) + 0.587f * (pixel >> 8 & 0xff) + 0.114f * (pixel & 0xff);
        }
        return grey;
    }
}
