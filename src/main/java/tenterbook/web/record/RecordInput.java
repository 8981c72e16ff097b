package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.nio.charset.CharacterCodingException;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.archive.field.TextCharacters;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.Words;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Reads what a program sends about records of one kind. */
public final class RecordInput<T> {
    private final Site site;
    private final Kind<T> kind;
    private final Part<T> part;

    public RecordInput(Site site, Kind<T> kind, Part<T> part) {
        this.site = site;
        this.kind = kind;
        this.part = part;
    }

    /** @throws InputRefused where the body is no JSON object */
    public ObjectNode sent(Context ctx) {
        try {
            return RecordCodec.parsed(FormEncoding.utf8(ctx.bodyAsBytes()));
        } catch (CharacterCodingException e) {
            throw refused(w("api.not-utf8"));
        } catch (IllegalArgumentException e) {
            throw refused(w("api.object-expected", "field", part.fields().get(1).name(), "why", Words.sentence(e)));
        }
    }

    private InputRefused refused(String sentence) {
        Faults faults = new Faults();
        faults.add("", sentence);
        return new InputRefused(kind.called(), faults);
    }

    /** @throws InputRefused with everything that is wrong in it */
    public T record(ObjectNode sent) {
        Faults faults = new Faults();
        TextCharacters.check(sent, faults, "");
        ObjectNode stored = part.understood(sent, new Reading(site.currency()), faults, "");
        T record = faults.isEmpty() ? part.read(stored, faults, "") : null;
        if (faults.isEmpty() && kind.id().apply(record).equals(RecordView.RESERVED)) {
            faults.add(part.key(), w("api.reserved", "name", RecordView.RESERVED));
        }
        if (!faults.isEmpty()) {
            throw new InputRefused(kind.called(), faults);
        }
        return record;
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
