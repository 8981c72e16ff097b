package tenterbook.search.recognition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

/**
 * The photographs of an archive on which geometry is worth trying, by votes: each place of the picture votes for the photographs
 * that have a place described much like it, the more the fewer there are of them. Thread-safe.
 */
final class Preselection {
    /** Places of the picture that vote. */
    private static final int VOTERS = 256;

    /** So many bits of 63 may differ. */
    private static final int NEAR = 12;

    private final Map<Digest, Kept> photos = new TreeMap<>(Comparator.comparing(Digest::hex));

    /** @param codes those of light places first */
    private record Kept(Digest photo, long[] codes, int light) {}

    /** A photograph, and whether the picture's mirror image is to be laid over it. */
    record Chosen(Digest photo, boolean mirrored, double votes) {}

    synchronized void put(Digest photo, long[] codes) {
        photos.put(photo, new Kept(photo, Codes.sorted(codes), Codes.light(codes)));
    }

    synchronized void remove(Digest photo) {
        photos.remove(photo);
    }

    synchronized boolean has(Digest photo) {
        return photos.containsKey(photo);
    }

    synchronized int size() {
        return photos.size();
    }

    private synchronized List<Kept> all() {
        return List.copyOf(photos.values());
    }

    /**
     * The most promising photographs, best first.
     *
     * @param most so many at most
     * @param without photographs that are left out
     */
    List<Chosen> of(PhotoFeatures picture, int most, Set<Digest> without, Progress progress) {
        List<Kept> kept =
                all().stream().filter(each -> !without.contains(each.photo)).toList();
        Map<Boolean, long[]> sides = new HashMap<>();
        sides.put(false, Codes.ofLargest(picture, VOTERS));
        sides.put(true, Codes.ofLargest(picture.mirrored(), VOTERS));
        List<Chosen> chosen = new ArrayList<>();
        sides.forEach((mirrored, codes) -> {
            double[] votes = votes(codes, kept, progress);
            IntStream.range(0, votes.length)
                    .filter(i -> votes[i] > 0)
                    .forEach(i -> chosen.add(new Chosen(kept.get(i).photo(), mirrored, votes[i])));
        });
        chosen.sort(Comparator.comparingDouble((Chosen each) -> -each.votes())
                .thenComparing(each -> each.photo().hex())
                .thenComparing(Chosen::mirrored));
        return List.copyOf(chosen.subList(0, Math.min(most, chosen.size())));
    }

    private static double[] votes(long[] voters, List<Kept> photos, Progress progress) {
        double[] votes = new double[photos.size()];
        byte[][] apart = new byte[photos.size()][];
        IntStream.range(0, votes.length).parallel().forEach(i -> {
            progress.orStop();
            apart[i] = nearest(voters, photos.get(i));
        });
        for (int voter = 0; voter < voters.length; voter++) {
            int found = 0;
            for (byte[] each : apart) {
                found += each[voter] <= NEAR ? 1 : 0;
            }
            double rare = Math.log((photos.size() + 1.0) / Math.max(1, found));
            for (int i = 0; i < votes.length; i++) {
                int closer = NEAR + 1 - apart[i][voter];
                votes[i] += closer > 0 ? rare * closer * closer : 0;
            }
        }
        return votes;
    }

    /** For each voter, how many bits the nearest place of the photograph differs in. */
    private static byte[] nearest(long[] voters, Kept photo) {
        byte[] nearest = new byte[voters.length];
        for (int voter = 0; voter < voters.length; voter++) {
            long code = voters[voter];
            boolean light = (code & 1) == 1;
            int end = light ? photo.light : photo.codes.length;
            int least = Long.SIZE;
            for (int i = light ? 0 : photo.light; i < end; i++) {
                least = Math.min(least, Long.bitCount(code ^ photo.codes[i]));
            }
            nearest[voter] = (byte) least;
        }
        return nearest;
    }
}
