package tenterbook.search.recognition;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import tenterbook.measure.Digest;

/** Photographs that a picture is compared with. */
interface Indexed {
    Preselection preselection();

    /** What is distinctive on these; those not looked at yet are left out. */
    Map<Digest, PhotoFeatures> features(Collection<Digest> photos);

    /** What these are of; those that show no piece are left out. */
    Map<Digest, List<Shown>> shown(Collection<Digest> photos);

    /** How many were not looked at yet. */
    int waiting();
}
