package tenterbook.search;

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
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.Kind;
import tenterbook.ledger.Saved;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.measure.Digest;
import tenterbook.measure.Identifier;
import tenterbook.photo.Photo;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;

/**
 * Reads pieces with all they depend on. What many pieces share is read once and kept, so one of these serves one batch and
 * is then dropped; whoever uses it across writes must index again what changed meanwhile. Safe for many threads.
 */
final class Gatherer {
    private static final Logger LOG = LoggerFactory.getLogger(Gatherer.class);
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

    private final OutsideFacets outside;

    Gatherer(Archive archive, OutsideFacets outside) {
        this.archive = archive;
        this.outside = outside;
    }

    /** Empty where the piece is withdrawn or never was. */
    Optional<PieceFacts> facts(String number) {
        return facts(List.of(number)).stream().findFirst();
    }

    /**
     * The index entry of a piece; empty where the piece is withdrawn or never was.
     *
     * @throws Unindexable where its records hold something that no entry can be made of
     */
    Optional<PieceDocument> entry(String number) {
        try {
            return facts(number).map(Gatherer::document);
        } catch (Unindexable e) {
            throw e;
        } catch (RuntimeException e) {
            throw new Unindexable(e);
        }
    }

    /**
     * The index entries of several pieces by number, read together. Those withdrawn are left out, and those that cannot be
     * indexed too, with a line in the log.
     */
    Map<String, PieceDocument> entries(List<String> numbers) {
        Map<String, PieceDocument> entries = new LinkedHashMap<>();
        try {
            for (PieceFacts facts : facts(numbers)) {
                entries.put(facts.piece().number().value(), document(facts));
            }
        } catch (RuntimeException e) {
            // One of them cannot be read; one by one, the others can.
            entries.clear();
            numbers.forEach(number -> entryIfAny(number).ifPresent(entry -> entries.put(number, entry)));
        }
        return entries;
    }

    /** As {@link #entry}, but one piece that cannot be indexed keeps no other from being found. */
    Optional<PieceDocument> entryIfAny(String number) {
        try {
            return entry(number);
        } catch (Unindexable e) {
            String why = "Piece {} cannot be indexed; searches leave it out until its record is mended";
            if (e.getCause() instanceof ArchiveProblem known) {
                LOG.error(why + ": {}", number, known.getMessage());
            } else {
                LOG.error(why, number, e);
            }
            return Optional.empty();
        }
    }

    private static PieceDocument document(PieceFacts facts) {
        try {
            return PieceDocument.of(facts);
        } catch (RuntimeException e) {
            throw new Unindexable(e);
        }
    }

    /** What a piece's records hold cannot be brought into the form of the index. */
    static final class Unindexable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Unindexable(RuntimeException cause) {
            super(cause.getMessage(), cause);
        }
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
        Map<String, List<Examination>> examined = examinations(numbers);
        Map<String, Instant> recorded = archive.ledger()
                .recorded(
                        Kinds.PIECE,
                        pieces.stream()
                                .filter(piece -> !piece.finished().known())
                                .map(piece -> piece.number().value())
                                .toList());
        Map<String, List<OutsideFacets.Given>> given = outside.of(numbers);
        return pieces.stream()
                .map(piece -> facts(
                        piece,
                        made,
                        photos,
                        examined.getOrDefault(piece.number().value(), List.of()),
                        given.getOrDefault(piece.number().value(), List.of()),
                        recorded.get(piece.number().value())))
                .toList();
    }

    /** By the number of the piece, earliest first. */
    private Map<String, List<Examination>> examinations(List<String> numbers) {
        Map<String, List<String>> named = archive.ledger().namedBy(Kinds.EXAMINATION, Kinds.PIECE, numbers);
        List<String> ids = named.values().stream().flatMap(List::stream).toList();
        return archive.ledger().records(Kinds.EXAMINATION, ids).values().stream()
                .sorted(Examination.IN_TIME)
                .collect(Collectors.groupingBy(each -> each.piece().value()));
    }

    private PieceFacts facts(
            Piece piece,
            Map<String, Clamping> clampingsById,
            Map<String, Photo> photosByDigest,
            List<Examination> examinations,
            List<OutsideFacets.Given> given,
            Instant recorded) {
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
        Map<BoardId, BoardPair> boards = found(
                Kinds.BOARD_PAIR,
                made.stream().flatMap(clamping -> clamping.boards().stream()).map(use -> use.board()));
        Map<ClothId, Cloth> cloths = found(
                Kinds.CLOTH,
                made.stream().flatMap(clamping -> clamping.cuts().stream()).map(Cut::cloth));
        Map<LotId, Lot> lots = found(Kinds.LOT, made.stream().flatMap(Clamping::lots));
        return new PieceFacts(
                piece,
                made,
                boards,
                cloths,
                lots,
                found(
                        Kinds.PARTY,
                        Stream.concat(
                                Stream.ofNullable(piece.holder()),
                                piece.events().stream().map(Event::party))),
                photos,
                examinations,
                given,
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
