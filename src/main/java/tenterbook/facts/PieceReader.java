package tenterbook.facts;

import java.time.Instant;
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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.Digest;
import tenterbook.measure.Identifier;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;

/**
 * Reads pieces with all records they depend on. Shared records are cached, so a reader serves one batch and is then dropped;
 * across writes the caller must read changed records again. Thread-safe.
 */
public final class PieceReader {
    private static final int CLAMPINGS_KEPT = 2000;
    private static final int TOGETHER = 100;
    private final Archive archive;
    /** Null where it cannot be read. */
    private final @Nullable Studio studio;

    private final Map<Object, Optional<?>> shared = new ConcurrentHashMap<>();
    private final Map<String, Clamping> clampings = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Clamping> eldest) {
            return size() > CLAMPINGS_KEPT;
        }
    };

    public PieceReader(Archive archive) {
        this.archive = archive;
        this.studio = archive.readableStudio().orElse(null);
    }

    /** The facts of one piece; its revision need not be the newest. */
    public static PieceFacts of(Archive archive, Piece piece) {
        return all(archive, List.of(piece)).get(0);
    }

    /** Several, in the order given; shared records are read once. */
    public static List<PieceFacts> all(Archive archive, List<Piece> pieces) {
        PieceReader reader = new PieceReader(archive);
        List<PieceFacts> facts = new ArrayList<>();
        for (int at = 0; at < pieces.size(); at += TOGETHER) {
            facts.addAll(reader.facts(pieces.subList(at, Math.min(pieces.size(), at + TOGETHER))));
        }
        return facts;
    }

    /** The pieces in use among these numbers, in no particular order; read together, which is faster than one by one. */
    public List<PieceFacts> named(List<String> numbers) {
        return facts(archive.ledger().records(Kinds.PIECE, numbers).values());
    }

    private List<PieceFacts> facts(Collection<Piece> pieces) {
        List<String> numbers =
                pieces.stream().map(piece -> piece.number().value()).toList();
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
        Map<String, List<Examination>> examined = examinations(numbers);
        Map<String, Instant> recorded = archive.ledger()
                .recorded(
                        Kinds.PIECE,
                        pieces.stream()
                                .filter(piece -> !piece.finished().known())
                                .map(piece -> piece.number().value())
                                .toList());
        return pieces.stream()
                .map(piece -> facts(
                        piece,
                        made,
                        photos,
                        examined.getOrDefault(piece.number().value(), List.of()),
                        recorded.get(piece.number().value())))
                .toList();
    }

    /** By the number of the piece. */
    private Map<String, List<Examination>> examinations(List<String> numbers) {
        Map<String, List<String>> named = archive.ledger().referencedBy(Kinds.EXAMINATION, Kinds.PIECE, numbers);
        List<String> ids = named.values().stream().flatMap(List::stream).toList();
        return archive.ledger().records(Kinds.EXAMINATION, ids).values().stream()
                .collect(Collectors.groupingBy(each -> each.piece().value()));
    }

    private PieceFacts facts(
            Piece piece,
            Map<String, Clamping> clampingsById,
            Map<String, Photo> photosByDigest,
            List<Examination> examinations,
            @Nullable Instant recorded) {
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
                studio,
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
                photos,
                () -> Colours.look(piece, photos, archive.cloths()::known),
                examinations,
                () -> archive.agreementsOf(piece.number()),
                recorded);
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

    @SuppressWarnings("unchecked") // each type of identifier belongs to one kind of record
    private <I extends Identifier, T> Map<I, T> found(Kind<T> kind, Stream<I> ids) {
        Map<I, T> found = new HashMap<>();
        Function<Object, Optional<?>> reading =
                id -> archive.ledger().find(kind, ((Identifier) id).value()).map(Saved::record);
        ids.filter(Objects::nonNull)
                .distinct()
                .forEach(id -> shared.computeIfAbsent(id, reading).ifPresent(record -> found.put(id, (T) record)));
        return found;
    }
}
