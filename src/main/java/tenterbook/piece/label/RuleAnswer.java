package tenterbook.piece.label;

import java.time.Instant;
import java.util.Objects;
import tenterbook.measure.Digest;

/**
 * What a person answered to a question of a rule of labels.
 *
 * @param rule its name in the table of rules, as in 'claim.organic'
 * @param asked the question as it was asked, in English
 * @param holds whether the answer was yes
 * @param words why, in the words of who answered
 * @param by who answered
 * @param at when
 * @param facts digest of the rule and the facts that were asked about; where they change it is asked again
 */
public record RuleAnswer(String rule, String asked, boolean holds, String words, String by, Instant at, Digest facts) {
    public RuleAnswer {
        rule = rule == null ? "" : rule.strip();
        asked = asked == null ? "" : asked.strip();
        words = words == null ? "" : words.strip();
        by = by == null ? "" : by.strip();
        Objects.requireNonNull(at, "An answer has its time");
        Objects.requireNonNull(facts, "An answer names the facts it rests on");
    }

    /** Whether both answer the same question, perhaps of other facts. */
    public boolean sameQuestion(RuleAnswer other) {
        return rule.equals(other.rule) && asked.equals(other.asked);
    }
}
