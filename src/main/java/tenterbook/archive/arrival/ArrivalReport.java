package tenterbook.archive.arrival;

import java.util.ArrayList;
import java.util.List;
import tenterbook.words.Message;

/**
 * The outcome of adding several photographs.
 *
 * @param taken names of the new ones, in the order given in
 * @param known a sentence for each that the archive had already, or that came twice
 * @param refused a sentence for each that was not taken
 * @param stopped how many had not had their turn when the person asked to stop
 */
public record ArrivalReport(List<String> taken, List<Message> known, List<Message> refused, int stopped) {
    public ArrivalReport {
        taken = List.copyOf(taken);
        known = List.copyOf(known);
        refused = List.copyOf(refused);
    }

    /** One sentence. */
    public Message summary() {
        return Message.of(
                "arrival.summary",
                "taken",
                taken.size(),
                "known",
                known.size(),
                "refused",
                refused.size(),
                "stopped",
                stopped);
    }

    /** Every sentence that a person should read, what was refused first. */
    public List<Message> findings() {
        List<Message> all = new ArrayList<>(refused);
        all.addAll(known);
        return all;
    }
}
