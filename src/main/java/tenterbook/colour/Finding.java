package tenterbook.colour;

import java.util.Optional;
import java.util.function.Function;

/**
 * What a measurement came to: a value, or the reason why there is none. A reason is a whole sentence for the maker.
 *
 * @param <T> what is found
 */
public sealed interface Finding<T> {
    /** A value that the inputs carry. */
    record Found<T>(T what) implements Finding<T> {}

    /** No value, and why; {@code why} is a sentence that also says what would help. */
    record Refused<T>(String why) implements Finding<T> {
        /** @throws IllegalArgumentException if no reason is given */
        public Refused {
            if (why == null || why.isBlank()) {
                throw new IllegalArgumentException("A refusal says why; no reason was given");
            }
        }
    }

    static <T> Finding<T> found(T value) {
        return new Found<>(value);
    }

    static <T> Finding<T> refused(String why) {
        return new Refused<>(why);
    }

    /** The value, or empty where refused. */
    default Optional<T> value() {
        return this instanceof Found<T> found ? Optional.of(found.what) : Optional.empty();
    }

    /** Why there is no value; empty where there is one. */
    default String refusal() {
        return this instanceof Refused<T> refused ? refused.why : "";
    }

    /** The same with the value changed; a refusal stays as it is. */
    default <R> Finding<R> map(Function<T, R> change) {
        return this instanceof Found<T> found ? found(change.apply(found.what)) : refused(refusal());
    }
}
