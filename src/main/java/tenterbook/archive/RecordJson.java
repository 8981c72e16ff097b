package tenterbook.archive;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationConfig;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.BeanSerializerModifier;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.board.BoardId;
import tenterbook.material.ClothId;
import tenterbook.material.LotId;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.Category;
import tenterbook.piece.Layers;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Status;
import tenterbook.piece.condition.ExaminationId;
import tenterbook.piece.condition.Overall;
import tenterbook.piece.condition.Reason;
import tenterbook.piece.condition.Seen;
import tenterbook.piece.condition.Severity;
import tenterbook.piece.condition.Signatory;
import tenterbook.piece.condition.Stability;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.FoldScheme;

/**
 * How records become JSON and back.
 *
 * <p>Identifiers are plain strings, choices are their words, and what nobody entered is left out: an absent field means
 * 'not recorded', never zero. A field this program does not know is passed over in reading the ledger, so that a newer
 * program's record still opens.
 */
public final class RecordJson {
    private RecordJson() {}

    public static ObjectMapper mapper() {
        SimpleModule module = new SimpleModule("records");
        text(module, BoardId.class, BoardId::value, BoardId::new);
        text(module, ClothId.class, ClothId::value, ClothId::new);
        text(module, LotId.class, LotId::value, LotId::new);
        text(module, ClampingId.class, ClampingId::value, ClampingId::new);
        text(module, PieceNumber.class, PieceNumber::value, PieceNumber::new);
        text(module, PartyId.class, PartyId::value, PartyId::new);
        text(module, ExaminationId.class, ExaminationId::value, ExaminationId::new);
        text(module, Digest.class, Digest::hex, Digest::new);
        text(module, NumberScheme.class, NumberScheme::prefix, NumberScheme::new);
        text(module, Currency.class, Currency::getCurrencyCode, Currency::getInstance);
        module.setMixInAnnotation(Money.class, MoneyInJson.class);
        module.setSerializerModifier(new LeavesOutUnrecorded());
        return JsonMapper.builder()
                .addModule(new JavaTimeModule())
                .addModule(module)
                .serializationInclusion(JsonInclude.Include.NON_EMPTY)
                .disable(com.fasterxml.jackson.databind.MapperFeature.AUTO_DETECT_IS_GETTERS)
                .enable(SerializationFeature.WRITE_ENUMS_USING_TO_STRING)
                .enable(DeserializationFeature.READ_ENUMS_USING_TO_STRING)
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .addHandler(new NotSaid())
                .build();
    }

    /** Programs up to version 0.1 stored ‘not said’ for these choices; it reads as not recorded. */
    private static final class NotSaid extends DeserializationProblemHandler {
        private static final String STORED = "not said";
        private static final Set<Class<?>> CHOICES = Set.of(
                Category.class, Status.class, Reason.class, Overall.class, Severity.class, Stability.class, Seen.class);

        @Override
        public @Nullable Object handleWeirdStringValue(
                DeserializationContext context, Class<?> type, String found, String failure) {
            return found.equals(STORED) && CHOICES.contains(type) ? null : NOT_HANDLED;
        }
    }

    /** An amount is text, because a binary fraction is no amount. */
    private interface MoneyInJson {
        @com.fasterxml.jackson.annotation.JsonFormat(shape = com.fasterxml.jackson.annotation.JsonFormat.Shape.STRING)
        BigDecimal amount();
    }

    private static <T> void text(
            SimpleModule module, Class<T> type, Function<T, String> toText, Function<String, T> fromText) {
        module.addSerializer(type, new StdSerializer<T>(type) {
            private static final long serialVersionUID = 1L;

            @Override
            public void serialize(T value, JsonGenerator json, SerializerProvider provider) throws IOException {
                json.writeString(toText.apply(value));
            }

            @Override
            public boolean isEmpty(SerializerProvider provider, T value) {
                return toText.apply(value).isEmpty();
            }
        });
        module.addDeserializer(type, new StdDeserializer<T>(type) {
            private static final long serialVersionUID = 1L;

            @Override
            public T deserialize(JsonParser json, DeserializationContext context) throws IOException {
                if (json.currentToken() != JsonToken.VALUE_STRING) {
                    return type.cast(context.handleUnexpectedToken(type, json));
                }
                try {
                    return fromText.apply(json.getText());
                } catch (IllegalArgumentException e) {
                    throw JsonMappingException.from(json, e.getMessage(), e);
                }
            }
        });
    }

    /** Leaves out values that say nothing was recorded. */
    private static final class LeavesOutUnrecorded extends BeanSerializerModifier {
        private static final long serialVersionUID = 1L;

        @Override
        public JsonSerializer<?> modifySerializer(
                SerializationConfig config, BeanDescription bean, JsonSerializer<?> serializer) {
            Class<?> type = bean.getBeanClass();
            if (type == Quantity.class) {
                return leavingOut(serializer, value -> !((Quantity) value).recorded());
            }
            if (type == PartialDate.class) {
                return leavingOut(serializer, value -> !((PartialDate) value).recorded());
            }
            if (type == Signatory.class) {
                return leavingOut(serializer, value -> !((Signatory) value).named());
            }
            if (type == Layers.class || type == DipSeries.class || type == FoldScheme.class) {
                return leavingOut(
                        serializer,
                        value -> value.equals(Layers.UNRECORDED)
                                || value.equals(DipSeries.UNRECORDED)
                                || value.equals(FoldScheme.UNRECORDED));
            }
            return serializer;
        }

        private static JsonSerializer<Object> leavingOut(
                JsonSerializer<?> serializer, java.util.function.Predicate<Object> unrecorded) {
            @SuppressWarnings("unchecked")
            JsonSerializer<Object> inner = (JsonSerializer<Object>) serializer;
            return new JsonSerializer<>() {
                @Override
                public void serialize(Object value, JsonGenerator json, SerializerProvider provider)
                        throws IOException {
                    inner.serialize(value, json, provider);
                }

                @Override
                public boolean isEmpty(SerializerProvider provider, Object value) {
                    return value == null || unrecorded.test(value);
                }
            };
        }
    }
}
