package tenterbook.archive.arrival;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.IntakePool;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.IntakePool.Outcome;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * Takes photographs in, each file first and then the record that names it. Some at a time, so that what was taken stays taken
 * if the work is stopped or the program ends.
 */
public final class Arrivals {
    /** Photographs recorded in one act. */
    private static final int TOGETHER = 16;

    private final Archive archive;
    private final PhotoIntake intake;
    private final String author;

    public Arrivals(Archive archive, PhotoIntake intake, String author) {
        this.archive = archive;
        this.intake = intake;
        this.author = author;
    }

    /** Returns when every photograph was taken, found known or refused, or when the person asked to stop. */
    public ArrivalReport take(List<Incoming> incoming, Progress progress) {
        Collected collected = new Collected();
        IntakePool pool = new IntakePool(intake);
        progress.at(0, incoming.size(), Message.of("arrival.taking-in").inEnglish());
        for (int from = 0; from < incoming.size(); from += TOGETHER) {
            List<Incoming> some = incoming.subList(from, Math.min(incoming.size(), from + TOGETHER));
            List<Outcome> outcomes = pool.take(some, new PartialProgress(progress, from, incoming.size()));
            keep(outcomes, collected);
        }
        return new ArrivalReport(collected.taken, collected.known, collected.refused, collected.stopped);
    }

    private void keep(List<Outcome> outcomes, Collected collected) {
        Map<Digest, Photo> fresh = new LinkedHashMap<>();
        for (Outcome outcome : outcomes) {
            if (outcome instanceof Outcome.Refused refused) {
                collected.refused.add(
                        Message.of("arrival.about-file", "file", refused.name(), "what", refused.sentence()));
            } else if (outcome instanceof Outcome.Stopped) {
                collected.stopped++;
            } else if (outcome instanceof Outcome.Taken taken) {
                collected.count(taken, find(taken.photo().digest()).orElse(null), fresh);
            }
        }
        if (!fresh.isEmpty()) {
            archive.ledger().write(author, act -> {
                fresh.values().forEach(photo -> name(archive, act, photo));
                return null;
            });
        }
    }

    private Optional<Message> find(Digest digest) {
        Optional<Saved<Photo>> known = archive.ledger().find(Kinds.PHOTO, digest.hex());
        return known.map(photo -> {
            List<String> pieces = archive.ledger().referencedBy(Kinds.PHOTO.key(digest.hex())).stream()
                    .filter(key -> key.kind().equals(Kinds.PIECE.name()))
                    .map(key -> key.id())
                    .toList();
            String called = photo.record().originalName().isEmpty()
                    ? digest.brief()
                    : photo.record().originalName();
            return Message.of(
                    "arrival.known", "name", called, "shown", !pieces.isEmpty(), "pieces", String.join(", ", pieces));
        });
    }

    /** Writes the record of a photograph, also of one that was set aside before; one in use stays as it is. */
    public static Photo name(Archive archive, LedgerTransaction act, Photo photo) {
        String id = photo.digest().hex();
        return act.find(Kinds.PHOTO, id).orElseGet(() -> {
            int versions = archive.ledger().history(Kinds.PHOTO.key(id)).size();
            return act.save(Kinds.PHOTO, photo, versions, "").record();
        });
    }

    private static final class Collected {
        private final List<String> taken = new ArrayList<>();
        private final List<Message> known = new ArrayList<>();
        private final List<Message> refused = new ArrayList<>();
        private int stopped;

        private void count(Outcome.Taken each, @Nullable Message before, Map<Digest, Photo> fresh) {
            Photo photo = each.photo();
            Photo twin = fresh.get(photo.digest());
            if (before != null) {
                known.add(Message.of("arrival.about-file", "file", each.name(), "what", before));
            } else if (twin != null) {
                known.add(Message.of("arrival.same-picture", "file", each.name(), "other", twin.originalName()));
            } else {
                fresh.put(photo.digest(), photo);
                taken.add(each.name());
            }
        }
    }

    /** Counts one part's photographs among all. */
    private record PartialProgress(Progress whole, int before, int total) implements Progress {
        @Override
        public void at(long done, long ofPart, String what) {
            whole.at(before + done, total, what);
        }

        @Override
        public boolean cancelled() {
            return whole.cancelled();
        }
    }
}
