package tenterbook.search.recognition;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.board.BoardId;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.search.recognition.Preselection.Chosen;

/**
 * Answers which piece, or at least which board pair, a picture shows. No outline of the cloth is needed; the picture may be
 * mirrored, turned, and of a part of the cloth. The same picture and archive give the same answer. Thread-safe.
 */
public final class Recogniser implements AutoCloseable {
    /** So many photographs, or their mirror images, are laid under the picture at first. */
    static final int TRIED = 40;

    /** When a board pair is found, so many more of it at most, of so many that were voted for. */
    private static final int MORE = 80;

    private static final int VOTED = 600;

    private final Indexed indexed;
    private final AutoCloseable table;

    Recogniser(Indexed indexed, AutoCloseable table) {
        this.indexed = indexed;
        this.table = table;
    }

    /** Follows the archive until {@link #close}, and returns at once: photographs are looked at behind. */
    public static Recogniser open(Archive archive) {
        FeatureTable table = FeatureTable.open(archive);
        return new Recogniser(new IndexedArchive(archive, table), table);
    }

    /** How many photographs of the archive are still to be looked at, and cannot be found yet. */
    public int waiting() {
        return indexed.waiting();
    }

    /**
     * Of a file.
     *
     * @return empty if it cannot be decoded
     * @throws IOException if it cannot be read or is no picture
     * @throws Progress.Cancelled if asked to stop
     */
    public Optional<Recognition> recognise(Path file, Progress progress) throws IOException {
        return PhotoMeasure.opened(file).map(opened -> recognise(opened.pixels(), Set.of(), progress));
    }

    /**
     * Of a photograph in the archive, as one that waits for its piece: by the other photographs.
     *
     * @return empty while it was not looked at yet, or where it cannot be shown
     * @throws Progress.Cancelled if asked to stop
     */
    public Optional<Recognition> recognise(Digest photo, Progress progress) {
        return Optional.ofNullable(indexed.features(Set.of(photo)).get(photo))
                .map(features -> recognise(features, Set.of(photo), progress));
    }

    /**
     * @param without photographs that are left out
     * @throws Progress.Cancelled if asked to stop
     */
    public Recognition recognise(Pixels picture, Set<Digest> without, Progress progress) {
        return recognise(FeatureFinder.of(picture), without, progress);
    }

    Recognition recognise(PhotoFeatures picture, Set<Digest> without, Progress progress) {
        List<Chosen> voted = indexed.preselection().of(picture, VOTED, without, progress);
        Map<Digest, List<Shown>> shown =
                indexed.shown(voted.stream().map(Chosen::photo).distinct().toList());
        List<Chosen> chosen =
                voted.stream().filter(each -> shown.containsKey(each.photo())).toList();
        List<Chosen> first = chosen.subList(0, Math.min(TRIED, chosen.size()));
        Map<Digest, Likeness> alike = alike(picture, first, progress);
        Recognition answer = Verdict.of(alike, shown, indexed.waiting());
        if (answer.boards().isEmpty()) {
            return answer;
        }
        // Its pieces are all much alike, so the votes cannot tell them apart.
        BoardId pair = answer.boards().get(0).board().board();
        List<Chosen> more = chosen.stream()
                .skip(first.size())
                .filter(each -> shown.get(each.photo()).stream()
                        .flatMap(of -> of.boards().stream())
                        .anyMatch(board -> board.board().equals(pair)))
                .limit(MORE)
                .toList();
        alike(picture, more, progress).forEach((photo, likeness) -> alike.merge(photo, likeness, Likeness::better));
        return Verdict.of(alike, shown, indexed.waiting());
    }

    /** The better one of the picture and its mirror image on each photograph. */
    private Map<Digest, Likeness> alike(PhotoFeatures picture, List<Chosen> chosen, Progress progress) {
        Map<Digest, Matches.Side> photos =
                sides(chosen.stream().map(Chosen::photo).toList());
        Matches.Side plain = new Matches.Side(picture);
        Matches.Side mirror = new Matches.Side(picture.mirrored());
        AtomicInteger done = new AtomicInteger();
        Map<Digest, Likeness> best = new LinkedHashMap<>();
        List<Found> found = chosen.parallelStream()
                .map(each -> {
                    progress.orStop();
                    Matches.Side photo = photos.get(each.photo());
                    Likeness likeness = photo == null
                            ? null
                            : Likeness.of(each.mirrored() ? mirror : plain, photo, each.mirrored());
                    progress.at(done.incrementAndGet(), chosen.size(), "");
                    return new Found(each.photo(), likeness);
                })
                .toList();
        for (Found each : found) {
            if (each.likeness != null) {
                best.merge(each.photo, each.likeness, Likeness::better);
            }
        }
        return best;
    }

    private record Found(Digest photo, @Nullable Likeness likeness) {}

    private Map<Digest, Matches.Side> sides(Collection<Digest> photos) {
        Map<Digest, Matches.Side> sides = new HashMap<>();
        indexed.features(Set.copyOf(photos)).forEach((photo, features) -> sides.put(photo, new Matches.Side(features)));
        return sides;
    }

    @Override
    public void close() {
        try {
            table.close();
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
