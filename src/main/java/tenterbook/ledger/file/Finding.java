package tenterbook.ledger.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Conventions;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/**
 * One thing that a check found wrong.
 *
 * @param place the revision, record, file or index entry
 * @param problem expected and found, in a sentence
 * @param consequence what it means; {@link Consequence#RECORDS} unless stated otherwise
 */
public record Finding(Written place, Written problem, Consequence consequence) implements Written {
    public Finding(Written place, Written problem) {
        this(place, problem, Consequence.RECORDS);
    }

    /** The same with another meaning. */
    public Finding meaning(Consequence other) {
        return new Finding(place, problem, other);
    }

    /**
     * Every finding on a line, gravest first, and after those of one meaning a line that says what is safe and what to do. Where
     * something is damaged there is one such line, at the end: what is safe without the damage may not be so with it.
     */
    public static List<Written> listed(List<Finding> findings) {
        List<Written> lines = new ArrayList<>();
        Optional<Consequence> gravest =
                findings.stream().map(Finding::consequence).min(Comparator.naturalOrder());
        boolean damage = gravest.filter(each -> each.severity() == Consequence.Severity.DAMAGE)
                .isPresent();
        for (Consequence each : Consequence.values()) {
            List<Finding> these = findings.stream()
                    .filter(finding -> finding.consequence() == each)
                    .toList();
            lines.addAll(these);
            if (!these.isEmpty() && !damage) {
                lines.add(each.advice());
            }
        }
        if (damage) {
            lines.add(gravest.orElseThrow().advice());
        }
        return lines;
    }

    public Finding(String where, Written problem) {
        this(Joined.with("", where), problem);
    }

    public Finding(String where, String what) {
        this(where, Joined.with("", what));
    }

    public String where() {
        return place.inEnglish();
    }

    public String what() {
        return problem.inEnglish();
    }

    @Override
    public String in(Conventions conventions) {
        return place.in(conventions) + ": " + problem.in(conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
