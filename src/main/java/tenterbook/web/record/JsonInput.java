package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.nio.charset.CharacterCodingException;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.TextCharacters;
import tenterbook.archive.record.SideUnits;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.Words;
import tenterbook.words.Written;

/** Reads what a program sends as JSON. */
public class JsonInput<T> {
    private final Site site;
    private final Written called;
    private final Part<T> part;

    /** @param called what is sent, as in 'piece' */
    public JsonInput(Site site, Written called, Part<T> part) {
        this.site = site;
        this.called = called;
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

    final Site site() {
        return site;
    }

    private InputRefused refused(String sentence) {
        Faults faults = new Faults();
        faults.add("", sentence);
        return new InputRefused(called, faults);
    }

    /** @throws InputRefused with everything that is wrong in it */
    public final T read(ObjectNode sent) {
        Faults faults = new Faults();
        TextCharacters.check(sent, faults, "");
        ObjectNode stored = part.understood(sent, site.reading(), faults, "");
        if (faults.isEmpty()) {
            SideUnits.checkSent(sent, stored, faults);
        }
        T value = faults.isEmpty() ? part.read(stored, faults, "") : null;
        if (faults.isEmpty()) {
            check(value, faults);
        }
        if (!faults.isEmpty()) {
            throw new InputRefused(called, faults);
        }
        return value;
    }

    /** What else would be wrong with it. */
    void check(T value, Faults faults) {}
}
