package tenterbook.web.found;

import java.util.List;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.issue.HangTagStatus.Standing;

/**
 * A piece as a row.
 *
 * @param tags its hang tags by market; empty where no column asks for them
 */
record Subject(PieceFacts facts, List<Standing> tags) {
    String number() {
        return facts.piece().number().value();
    }
}
