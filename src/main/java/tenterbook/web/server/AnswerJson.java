package tenterbook.web.server;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import java.util.function.Function;
import tenterbook.measure.Digest;
import tenterbook.measure.Identifier;

/**
 * How answers other than records become JSON: identifiers, digests and moments are plain strings, choices are their words, and what is empty
 * is left out. Records are written from their descriptions.
 */
final class AnswerJson {
    private AnswerJson() {}

    static ObjectMapper mapper() {
        SimpleModule module = new SimpleModule("answers");
        text(module, Identifier.class, Identifier::value);
        text(module, Digest.class, Digest::hex);
        text(module, Instant.class, Instant::toString);
        return JsonMapper.builder()
                .addModule(module)
                .defaultPropertyInclusion(
                        JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, JsonInclude.Include.NON_EMPTY))
                .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
                .enable(SerializationFeature.WRITE_ENUMS_USING_TO_STRING)
                .build();
    }

    private static <T> void text(SimpleModule module, Class<T> type, Function<T, String> text) {
        module.addSerializer(type, new StdSerializer<>(type) {
            private static final long serialVersionUID = 1L;

            @Override
            public void serialize(T value, JsonGenerator json, SerializerProvider provider) throws IOException {
                json.writeString(text.apply(value));
            }
        });
    }
}
