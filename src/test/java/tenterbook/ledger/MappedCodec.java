package tenterbook.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import tenterbook.ledger.revision.RecordCodec;

/** Records of tests, as an object mapper writes and reads them. */
public record MappedCodec<T>(ObjectMapper mapper, Class<T> type) implements RecordCodec<T> {
    @Override
    public ObjectNode toJson(T record) {
        return mapper.valueToTree(record);
    }

    @Override
    public T fromJson(ObjectNode json) {
        try {
            return mapper.treeToValue(json, type);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(e.getOriginalMessage(), e);
        }
    }

    @Override
    public T fromText(String text) {
        try {
            return mapper.readValue(text, type);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(e.getOriginalMessage(), e);
        }
    }
}
