package tenterbook.archive.field;

import java.util.Map;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** An input in which something could not be understood. Nothing was changed. */
public final class InputRefused extends Refusal {
    private static final long serialVersionUID = 1L;
    private final transient Map<String, tenterbook.words.Written> problems;

    /** @param what was sent, as in 'piece' */
    public InputRefused(tenterbook.words.Written what, Faults faults) {
        super(Message.of("input.refused", "what", what, "faults", faults.inOneLine()));
        this.problems = faults.all();
    }

    /** Sentences by the dotted name of their field; empty where the whole could not be read. */
    public Map<String, tenterbook.words.Written> problems() {
        return problems;
    }
}
