package tenterbook.exchange;

import java.util.List;
import java.util.stream.Collectors;
import tenterbook.ledger.Finding;

/** Findings one after another, each closed as a sentence. */
final class Sentences {
    private Sentences() {}

    static String of(List<Finding> findings) {
        return findings.stream()
                .map(Finding::toString)
                .map(text -> text.endsWith(".") ? text : text + ".")
                .collect(Collectors.joining(" "));
    }
}
