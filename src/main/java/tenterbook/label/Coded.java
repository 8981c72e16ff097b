package tenterbook.label;

import java.util.Optional;
import java.util.stream.Stream;

/** A choice with a code for addresses, options and stored papers, apart from its name in the program and its word on a page. */
public interface Coded {
    /** As in {@code hang-tag}; stored, so it never changes. */
    String code();

    static <E extends Coded> Optional<E> find(E[] all, String code) {
        return Stream.of(all).filter(each -> each.code().equals(code)).findFirst();
    }
}
