package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import java.util.Optional;
import tenterbook.words.Message;

/**
 * What a text may hold: every Unicode character but the control characters other than tab and line breaks, which no page shows and
 * many programs refuse, and no unpaired surrogate, which UTF-8 cannot write (RFC 3629, section 3).
 */
public final class TextCharacters {
    private TextCharacters() {}

    /** The sentence about the first character that a text may not hold; empty where there is none. */
    public static Optional<Message> fault(String text) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int character = text.codePointAt(i);
            if (character >= Character.MIN_SURROGATE && character <= Character.MAX_SURROGATE) {
                return Optional.of(sentence("input.half-character", character));
            }
            if (Character.isISOControl(character) && character != '\t' && character != '\n' && character != '\r') {
                return Optional.of(sentence("input.control-character", character));
            }
        }
        return Optional.empty();
    }

    private static Message sentence(String key, int character) {
        return Message.of(key, "code", String.format(Locale.ROOT, "U+%04X", character));
    }

    /** Adds a fault for every text, names of fields among them, that may not be stored. */
    public static void check(JsonNode json, Faults faults, String at) {
        if (json.isTextual()) {
            fault(json.textValue()).ifPresent(sentence -> faults.add(at, sentence));
        } else if (json.isArray()) {
            for (int i = 0; i < json.size(); i++) {
                check(json.get(i), faults, faults.inside(at, i));
            }
        } else if (json.isObject()) {
            json.properties().forEach(field -> {
                fault(field.getKey()).ifPresent(sentence -> faults.add(at, sentence));
                check(field.getValue(), faults, faults.inside(at, field.getKey()));
            });
        }
    }
}
