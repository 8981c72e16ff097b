package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.NewIdentifier;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.TextCharacters;
import tenterbook.ledger.revision.Kind;
import tenterbook.web.Site;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Reads what a program sends about records of one kind. */
public final class RecordInput<T> extends JsonInput<T> {
    private final Kind<T> kind;
    private final Part<T> part;

    public RecordInput(Site site, Kind<T> kind, Part<T> part) {
        super(site, kind.called(), part);
        this.kind = kind;
        this.part = part;
    }

    /** As sent, with the first number of each piece that is named by a later one. */
    @Override
    public ObjectNode sent(Context ctx) {
        ObjectNode sent = super.sent(ctx);
        firstNumber(sent);
        if (sent.get("pieces") instanceof ArrayNode pieces) {
            pieces.forEach(this::firstNumber);
        }
        return sent;
    }

    private void firstNumber(JsonNode named) {
        if (named instanceof ObjectNode object && object.path("piece").isTextual()) {
            site().archive()
                    .piece(object.get("piece").textValue())
                    .ifPresent(piece -> object.put("piece", piece.number().value()));
        }
    }

    @Override
    void check(T record, Faults faults) {
        if (kind.id().apply(record).equals(NewIdentifier.RESERVED)) {
            faults.add(part.key(), w("api.reserved", "name", NewIdentifier.RESERVED));
        }
    }

    /** The version that a change was made from. */
    int version(Context ctx) {
        String tag = String.valueOf(ctx.header("If-Match")).strip();
        if (!tag.matches("\"?\\d{1,9}\"?")) {
            throw new MissingVersion(
                    Message.of("api.version-missing", "kind", kind.called().inEnglish()));
        }
        return Integer.parseInt(tag.replace("\"", ""));
    }

    /**
     * Why a record was changed, as typed.
     *
     * @throws Refusal where it holds a character that no text may hold
     */
    static String note(@Nullable String typed) {
        TextCharacters.fault(typed == null ? "" : typed).ifPresent(sentence -> {
            throw new Refusal(sentence);
        });
        return typed == null ? "" : typed;
    }

    /** A change names no version that it was made from: 428 of RFC 6585. */
    static final class MissingVersion extends RuntimeException implements Explained {
        private static final long serialVersionUID = 1L;
        private final transient Message explanation;

        MissingVersion(Message explanation) {
            super(explanation.inEnglish());
            this.explanation = explanation;
        }

        @Override
        public Written explanation() {
            return explanation;
        }
    }
}
