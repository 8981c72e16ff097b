package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.ledger.revision.RevisionForm.Whole;
import tenterbook.measure.Digest;

/** Reads back what {@link Revision#lines} wrote. The hash is the stated one; {@link Revision#computedHash} says whether it holds. */
public final class ChainText {
    private ChainText() {}

    /** Whether a revision of this first line has a second line. */
    public static boolean goesOn(String line) {
        return line.contains("\"format\":2");
    }

    /**
     * @param line the first line of a revision
     * @param content its second line; null where it has none, or that was lost
     * @return empty where the lines are no revision
     */
    public static Optional<Revision> read(String line, @Nullable String content) {
        try {
            ObjectNode link = RecordCodec.parsed(line);
            return Optional.of(
                    link.path("format").asInt(1) == 1
                            ? whole(link)
                            : parted(link, RecordCodec.parsed(String.valueOf(content))));
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Revision whole(ObjectNode link) {
        return revision(
                link,
                text(link, "id"),
                text(link, "record"),
                text(link, "author"),
                text(link, "note"),
                new Whole(link.path("redacted").asBoolean()));
    }

    private static Revision parted(ObjectNode link, ObjectNode content) {
        if (content.path("content_of").asLong() != link.path("sequence").asLong()) {
            throw new IllegalArgumentException(content.path("content_of").asText());
        }
        ObjectNode shown = RecordCodec.parsed(text(content, "public"));
        PrivatePart kept = content.has("private")
                ? kept(
                        RecordCodec.parsed(text(content, "private")),
                        content.path("redacted").asBoolean())
                : null;
        Parted form = new Parted(
                text(shown, "id"),
                text(shown, "salt"),
                text(shown, "record"),
                digest(link, "public_digest"),
                digest(link, "private_digest"),
                link.has("before") ? digest(link, "before") : null,
                kept);
        String id = kept == null || kept.id() == null ? form.id() : kept.id();
        String json = kept == null ? form.shown() : new TwoParts(form.shown(), form.fields()).merged();
        return revision(link, id, json, kept == null ? "" : kept.author(), kept == null ? "" : kept.note(), form);
    }

    private static PrivatePart kept(ObjectNode text, boolean redacted) {
        return new PrivatePart(
                text.path("salt").asText(""),
                text(text, "author"),
                text(text, "note"),
                text.has("id") ? text(text, "id") : null,
                text(text, "fields"),
                redacted);
    }

    private static Revision revision(
            ObjectNode link, String id, String json, String author, String note, RevisionForm form) {
        return new Revision(
                link.path("sequence").asLong(),
                new RecordKey(text(link, "kind"), id),
                link.path("version").asInt(),
                text(link, "act").equals("withdraw"),
                json,
                Instant.parse(text(link, "written_at")),
                author,
                note,
                digest(link, "previous_hash"),
                digest(link, "hash"),
                form);
    }

    private static String text(ObjectNode node, String field) {
        if (!node.path(field).isTextual()) {
            throw new IllegalArgumentException(field);
        }
        return node.path(field).asText();
    }

    private static Digest digest(ObjectNode node, String field) {
        return new Digest(text(node, field));
    }
}
