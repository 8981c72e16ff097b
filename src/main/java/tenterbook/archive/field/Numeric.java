package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.function.Function;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A bare number whose unit is fixed by its field.
 *
 * @param whole whether it has no fraction
 * @param from a number that was typed
 * @param stored a number that is stored
 * @param suffix a unit that may be written after it and is passed over, as in {@code mm}; a regular expression
 */
public record Numeric<N extends Number>(
        boolean whole, String suffix, Function<BigDecimal, N> from, Function<JsonNode, N> stored)
        implements Written<N> {
    public static final Numeric<Integer> WHOLE = new Numeric<>(
            true, "", BigDecimal::intValueExact, json -> json.decimalValue().intValueExact());
    public static final Numeric<Long> LONG = new Numeric<>(
            true, "", BigDecimal::longValueExact, json -> json.decimalValue().longValueExact());
    public static final Numeric<Double> DECIMAL = decimal("");
    public static final Numeric<Double> MILLIMETRES = decimal("mm");
    public static final Numeric<Double> PERCENT = decimal("%");

    /** A number with a fraction; see {@code suffix}. */
    public static Numeric<Double> decimal(String suffix) {
        return new Numeric<>(false, suffix, BigDecimal::doubleValue, JsonNode::doubleValue);
    }

    @Override
    public JsonNode write(N value) {
        return whole ? LongNode.valueOf(value.longValue()) : DoubleNode.valueOf(value.doubleValue());
    }

    @Override
    public N read(JsonNode json, Faults faults, String at) {
        if (json.isNumber()) {
            try {
                return stored.apply(json);
            } catch (ArithmeticException e) {
                faults.add(at, Message.of("field.whole-number", "found", json));
                return null;
            }
        }
        faults.add(at, Message.of("field.number", "found", Part.brief(json)));
        return null;
    }

    @Override
    public N parse(String text, Reading reading) {
        String plain = text.replaceAll("\\s*(?:" + suffix + ")$", "");
        if (whole) {
            if (!plain.matches("[+-]?\\d{1,9}")) {
                throw Refusal.of("field.no-whole-number", "found", text);
            }
            return from.apply(new BigDecimal(plain));
        }
        if (plain.matches("[-−]\\d.*")) {
            return from.apply(number(plain.substring(1), text).negate());
        }
        BigDecimal number = number(plain, text);
        return number == null ? null : from.apply(number);
    }

    private static BigDecimal number(String plain, String text) {
        Quantity number = QuantityText.read(plain, Unit.COUNT);
        if (number.known() && number.isRange()) {
            throw Refusal.of("field.one-number", "found", text);
        }
        return number.known() ? BigDecimal.valueOf(number.low()) : null;
    }

    @Override
    public String text(N value) {
        return BigDecimal.valueOf(value.doubleValue()).stripTrailingZeros().toPlainString();
    }

    @Override
    public ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        return schema.put("type", whole ? "integer" : "number");
    }
}
