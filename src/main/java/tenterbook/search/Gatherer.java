package tenterbook.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.ledger.Saved;
import tenterbook.measure.Identifier;
import tenterbook.photo.Photo;
import tenterbook.piece.Event;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;

/**
 * Reads pieces with all they depend on. What many pieces share is read once and kept, so one of these serves one batch and
 * is then dropped; whoever uses it across writes must index again what changed meanwhile. Safe for many threads.
 */
final class Gatherer {
    private static final int CLAMPINGS_KEPT = 2000;
    private final Archive archive;
    private final Map<Object, Optional<?>> shared = new ConcurrentHashMap<>();
    private final Map<String, Optional<Clamping>> clampings = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Optional<Clamping>> eldest) {
            return size() > CLAMPINGS_KEPT;
        }
    };

    Gatherer(Archive archive) {
        this.archive = archive;
    }

    /** Empty where the piece is withdrawn or never was. */
    Optional<PieceFacts> facts(String number) {
        return archive.piece(number).map(this::facts);
    }

    private PieceFacts facts(Piece piece) {
        List<Clamping> made = new ArrayList<>();
        for (MadeIn in : piece.made()) {
            clamping(in.clamping().value()).ifPresent(made::add);
        }
        Map<tenterbook.measure.Digest, Photo> photos = new HashMap<>();
        for (var photo : piece.photos()) {
            archive.ledger()
                    .find(Kinds.PHOTO, photo.photo().hex())
                    .map(Saved::record)
                    .ifPresent(found -> photos.put(photo.photo(), found));
        }
        return new PieceFacts(
                piece,
                made,
                found(
                        Kinds.BOARD_PAIR,
                        made.stream()
                                .flatMap(clamping -> clamping.boards().stream())
                                .map(use -> use.board())),
                found(
                        Kinds.CLOTH,
                        made.stream()
                                .flatMap(clamping -> clamping.cuts().stream())
                                .map(Cut::cloth)),
                found(Kinds.LOT, made.stream().flatMap(Clamping::lots)),
                found(
                        Kinds.PARTY,
                        Stream.concat(
                                Stream.ofNullable(piece.holder()),
                                piece.events().stream().map(Event::party))),
                photos);
    }

    private Optional<Clamping> clamping(String id) {
        synchronized (clampings) {
            Optional<Clamping> kept = clampings.get(id);
            if (kept != null) {
                return kept;
            }
        }
        Optional<Clamping> found = archive.clamping(id);
        synchronized (clampings) {
            clampings.put(id, found);
        }
        return found;
    }

    private <I extends Identifier, T> Map<I, T> found(Kind<T> kind, Stream<I> ids) {
        Map<I, T> found = new HashMap<>();
        Function<Object, Optional<?>> reading =
                id -> archive.ledger().find(kind, ((Identifier) id).value()).map(Saved::record);
        ids.filter(Objects::nonNull)
                .distinct()
                .forEach(id -> shared.computeIfAbsent(id, reading)
                        .ifPresent(record -> found.put(id, kind.type().cast(record))));
        return found;
    }
}
