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
 * @param refusal key of the sentence about a text that is no whole number; {found} is the text
 */
public record Numeric<N extends Number>(
        boolean whole, String suffix, Function<BigDecimal, N> from, Function<JsonNode, N> stored, String refusal)
        implements Written<N> {
    /** A new number is at most this, typed or sent; what is stored is read as it is. */
    private static final double MOST = 1e9;

    public static final Numeric<Integer> WHOLE = whole("input.no-whole-number");
    public static final Numeric<Long> LONG = new Numeric<>(
            true,
            "",
            BigDecimal::longValueExact,
            json -> json.decimalValue().longValueExact(),
            "input.no-whole-number");
    public static final Numeric<Double> DECIMAL = decimal("");
    public static final Numeric<Double> MILLIMETRES = decimal("mm");
    public static final Numeric<Double> PERCENT = decimal("%");

    /** A number with a fraction; see {@code suffix}. */
    public static Numeric<Double> decimal(String suffix) {
        return new Numeric<>(false, suffix, BigDecimal::doubleValue, JsonNode::doubleValue, "");
    }

    /** @param refusal key of the sentence about a text that is no whole number */
    public static Numeric<Integer> whole(String refusal) {
        return new Numeric<>(
                true, "", BigDecimal::intValueExact, json -> json.decimalValue().intValueExact(), refusal);
    }

    @Override
    public JsonNode write(N value) {
        return whole ? LongNode.valueOf(value.longValue()) : DoubleNode.valueOf(value.doubleValue());
    }

    @Override
    public N read(JsonNode json, Faults faults, String at) {
        if (json.isNumber()) {
            if (!Double.isFinite(json.doubleValue())) {
                faults.add(at, Message.of("input.number-too-large", "most", (long) MOST));
                return null;
            }
            try {
                return stored.apply(json);
            } catch (ArithmeticException e) {
                faults.add(at, Message.of("input.whole-number", "found", Part.brief(json)));
                return null;
            }
        }
        faults.add(at, Message.of("input.number", "found", Part.brief(json)));
        return null;
    }

    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        N value = read(given, faults, at);
        if (value != null && tooLarge(value)) {
            faults.add(at, Message.of("input.number-too-large", "most", (long) MOST));
            return null;
        }
        return value == null ? null : write(value);
    }

    private static boolean tooLarge(Number value) {
        return Math.abs(value.doubleValue()) > MOST;
    }

    @Override
    public N parse(String text, Reading reading) {
        String plain = text.replaceAll("\\s*(?:" + suffix + ")$", "");
        if (whole) {
            if (!plain.matches("[+-]?\\d{1,9}")) {
                throw Refusal.of(refusal, "found", text);
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
            throw Refusal.of("input.one-number", "found", text);
        }
        if (number.known() && tooLarge(number.low())) {
            throw Refusal.of("input.number-too-large", "most", (long) MOST);
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
