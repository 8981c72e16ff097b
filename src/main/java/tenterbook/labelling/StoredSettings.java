package tenterbook.labelling;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.words.Language;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Settings as stored with an issued paper: one JSON object under each of its member names. Every stored name is written beside
 * its component; a choice is stored as its {@link CodedChoice} code, a language as its code.
 */
public final class StoredSettings {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .addMixIn(CodedChoice.class, CodedInJson.class)
            .addMixIn(Language.class, CodedInJson.class)
            .build();

    /** A choice is stored as its code. */
    private interface CodedInJson {
        @JsonValue
        String code();
    }

    private StoredSettings() {}

    public static JsonNode json(Object settings) {
        return JSON.valueToTree(settings);
    }

    /** @throws IllegalArgumentException where they are not understood, with the reason for the person who asks for the paper */
    public static <T> T read(IssuedPaper paper, String member, Class<T> type) {
        try {
            return JSON.treeToValue(paper.settings().path(member), type);
        } catch (JsonProcessingException e) {
            throw new Refusal(
                    Message.of("label.refused.settings", "paper", paper.id(), "why", e.getOriginalMessage()), e);
        }
    }
}
