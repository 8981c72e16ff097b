package tenterbook.search;

import java.util.ArrayList;
import java.util.Collection;
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
import tenterbook.measure.Digest;
import tenterbook.measure.Identifier;
import tenterbook.photo.Photo;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
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
    private final Map<String, Clamping> clampings = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Clamping> eldest) {
            return size() > CLAMPINGS_KEPT;
        }
    };

    Gatherer(Archive archive) {
        this.archive = archive;
    }

    /** Empty where the piece is withdrawn or never was. */
    Optional<PieceFacts> facts(String number) {
        return facts(List.of(number)).stream().findFirst();
    }

    /** Of those that are in use, in no promised order; read together, which is quicker than one by one. */
    List<PieceFacts> facts(List<String> numbers) {
        Collection<Piece> pieces =
                archive.ledger().records(Kinds.PIECE, numbers).values();
        Map<String, Clamping> made = clampings(pieces.stream()
                .flatMap(piece -> piece.made().stream())
                .map(in -> in.clamping().value())
                .distinct()
                .toList());
        Map<String, Photo> photos = archive.ledger()
                .records(
                        Kinds.PHOTO,
                        pieces.stream()
                                .flatMap(piece -> piece.photos().stream())
                                .map(photo -> photo.photo().hex())
                                .distinct()
                                .toList());
        return pieces.stream().map(piece -> facts(piece, made, photos)).toList();
    }

    private PieceFacts facts(Piece piece, Map<String, Clamping> clampingsById, Map<String, Photo> photosByDigest) {
        List<Clamping> made = piece.made().stream()
                .map(in -> clampingsById.get(in.clamping().value()))
                .filter(Objects::nonNull)
                .toList();
        Map<Digest, Photo> photos = new HashMap<>();
        for (PiecePhoto photo : piece.photos()) {
            Photo found = photosByDigest.get(photo.photo().hex());
            if (found != null) {
                photos.put(photo.photo(), found);
            }
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

    private Map<String, Clamping> clampings(List<String> ids) {
        Map<String, Clamping> found = new HashMap<>();
        List<String> unread = new ArrayList<>();
        synchronized (clampings) {
            for (String id : ids) {
                Clamping kept = clampings.get(id);
                if (kept == null) {
                    unread.add(id);
                } else {
                    found.put(id, kept);
                }
            }
        }
        Map<String, Clamping> read = archive.ledger().records(Kinds.CLAMPING, unread);
        synchronized (clampings) {
            clampings.putAll(read);
        }
        found.putAll(read);
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
