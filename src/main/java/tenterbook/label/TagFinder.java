package tenterbook.label;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;

/**
 * Reads pieces with what their tags say and finds how they stand. What many pieces share is read once and kept, so one of these
 * serves one batch and is then dropped. Safe for many threads.
 */
final class TagFinder {
    private static final Logger LOG = LoggerFactory.getLogger(TagFinder.class);
    private final Archive archive;
    private final Studio studio;
    private final TagStanding tags;
    private final Map<String, Optional<?>> shared = new ConcurrentHashMap<>();

    private TagFinder(Archive archive, TagStanding tags) {
        this.archive = archive;
        this.studio = archive.studio();
        this.tags = tags;
    }

    /** @param many whether most pieces will be asked for, so that every paper is best read once */
    static TagFinder of(Archive archive, boolean many) {
        return new TagFinder(archive, many ? TagStanding.ofAll(archive) : TagStanding.ofFew(archive));
    }

    /** By number; those withdrawn are left out, and those that cannot be read too, with a line in the log. */
    Map<String, List<TagStanding.Standing>> of(List<String> numbers) {
        try {
            return together(numbers);
        } catch (JdbiException e) {
            // The disk, not a record.
            throw e;
        } catch (RuntimeException e) {
            if (numbers.size() == 1) {
                LOG.error(
                        "How piece {} stands with its tags cannot be told until its record is mended",
                        numbers.get(0),
                        e);
                return Map.of();
            }
            // One of them cannot be read; one by one, the others can.
            Map<String, List<TagStanding.Standing>> found = new LinkedHashMap<>();
            numbers.forEach(number -> found.putAll(of(List.of(number))));
            return found;
        }
    }

    private Map<String, List<TagStanding.Standing>> together(List<String> numbers) {
        Collection<Piece> pieces =
                archive.ledger().records(Kinds.PIECE, numbers).values();
        Map<String, Clamping> made = archive.ledger()
                .records(
                        Kinds.CLAMPING,
                        pieces.stream()
                                .flatMap(piece -> piece.made().stream())
                                .map(in -> in.clamping().value())
                                .distinct()
                                .toList());
        Map<String, List<TagStanding.Standing>> found = new LinkedHashMap<>();
        for (Piece piece : pieces) {
            LabelFacts facts = Gathering.bare(
                    studio,
                    piece,
                    piece.made().stream()
                            .map(in -> made.get(in.clamping().value()))
                            .filter(Objects::nonNull)
                            .toList(),
                    id -> once("cloth " + id, () -> archive.cloth(id)),
                    id -> once("lot " + id, () -> archive.lot(id)),
                    id -> once("board " + id, () -> archive.board(id)));
            found.put(piece.number().value(), tags.of(facts));
        }
        return found;
    }

    @SuppressWarnings("unchecked")
    private <T> Optional<T> once(String key, java.util.function.Supplier<Optional<T>> reading) {
        return (Optional<T>) shared.computeIfAbsent(key, of -> reading.get());
    }
}
