package tenterbook.colour.space;

import java.util.Optional;
import java.util.function.Function;
import tenterbook.words.Written;

/**
 * A measured value, or the reason why there is none, a sentence for the maker.
 *
 * @param <T> type of the value
 */
public sealed interface MeasurementResult<T> {
    record Found<T>(T what) implements MeasurementResult<T> {}

    /** @param why a sentence that also says what would help */
    record Refused<T>(Written why) implements MeasurementResult<T> {}

    static <T> MeasurementResult<T> found(T value) {
        return new Found<>(value);
    }

    static <T> MeasurementResult<T> refused(Written why) {
        return new Refused<>(why);
    }

    /** With a sentence in English. */
    static <T> MeasurementResult<T> refused(String why) {
        if (why == null || why.isBlank()) {
            throw new IllegalStateException("A refusal says why; no reason was given");
        }
        return new Refused<>(conventions -> why);
    }

    /** The value, or empty where refused. */
    default Optional<T> value() {
        return this instanceof Found<T> found ? Optional.of(found.what) : Optional.empty();
    }

    /** Why there is no value; empty where there is one. */
    default Written reason() {
        return this instanceof Refused<T> refused ? refused.why : conventions -> "";
    }

    /** The reason in English. */
    default String refusal() {
        return reason().inEnglish();
    }

    /** The same with the value changed; a refusal stays as it is. */
    default <R> MeasurementResult<R> map(Function<T, R> change) {
        return this instanceof Found<T> found ? found(change.apply(found.what)) : refused(reason());
    }
}
