package tenterbook.archive.field;

import java.util.Map;

/** An input in which something could not be understood. Nothing was changed. */
public final class InputRefused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final transient Map<String, String> problems;

    /** @param what was sent, as in 'piece' */
    public InputRefused(String what, Faults faults) {
        super("The %s was not understood: %s Nothing was changed.".formatted(what, faults.inOneLine()));
        this.problems = faults.all();
    }

    /** Sentences by the dotted name of their field; empty where the whole could not be read. */
    public Map<String, String> problems() {
        return problems;
    }
}
