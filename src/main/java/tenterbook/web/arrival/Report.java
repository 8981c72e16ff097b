package tenterbook.web.arrival;

import java.util.ArrayList;
import java.util.List;

/**
 * What became of photographs that were taken in together.
 *
 * @param taken names of the new ones, in the order given in
 * @param known a sentence for each that the archive had already, or that came twice
 * @param refused a sentence for each that was not taken
 * @param stopped how many had not had their turn when the person asked to stop
 */
public record Report(List<String> taken, List<String> known, List<String> refused, int stopped) {
    public Report {
        taken = List.copyOf(taken);
        known = List.copyOf(known);
        refused = List.copyOf(refused);
    }

    /** One sentence. */
    public String summary() {
        List<String> parts = new ArrayList<>();
        parts.add(counted(taken.size(), "new photograph was", "new photographs were") + " taken in");
        if (!known.isEmpty()) {
            parts.add(counted(known.size(), "was", "were") + " there already");
        }
        if (!refused.isEmpty()) {
            parts.add(counted(refused.size(), "was", "were") + " not taken");
        }
        if (stopped > 0) {
            parts.add(counted(stopped, "was", "were") + " left when you asked to stop, and can be taken in later");
        }
        String all = String.join("; ", parts) + ".";
        return Character.toUpperCase(all.charAt(0)) + all.substring(1);
    }

    /** Every sentence that a person should read, what was refused first. */
    public List<String> findings() {
        List<String> all = new ArrayList<>(refused);
        all.addAll(known);
        return all;
    }

    private static String counted(int count, String one, String many) {
        return (count == 0 ? "no" : "%,d".formatted(count)) + " " + (count == 1 ? one : many);
    }
}
