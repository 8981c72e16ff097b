package tenterbook.exchange;

import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/** Joins findings, each ended as a sentence. */
final class Sentences {
    private Sentences() {}

    static Written of(List<Finding> findings) {
        return new Joined(" ", findings.stream().map(Sentences::closed).toList());
    }

    /** Likewise, and then {@code next} where it says anything. */
    static Written followed(List<Finding> findings, Written next) {
        Written first = of(findings);
        return conventions -> (first.in(conventions) + " " + next.in(conventions)).strip();
    }

    private static Written closed(Finding finding) {
        return conventions -> {
            String text = finding.in(conventions);
            return text.endsWith(".") ? text : text + ".";
        };
    }
}
