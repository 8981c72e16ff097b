package tenterbook.labelling.rule;

import java.util.Optional;
import java.util.stream.Stream;

/** A choice with a code for addresses, options and stored papers, apart from its name in the program and its word on a page. */
public interface CodedChoice {
    /** As in {@code hang-tag}; stored, so it never changes. */
    String code();

    static <E extends CodedChoice> Optional<E> find(E[] all, String code) {
        return Stream.of(all).filter(each -> each.code().equals(code)).findFirst();
    }
}
