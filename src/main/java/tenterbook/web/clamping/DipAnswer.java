package tenterbook.web.clamping;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Lab;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.facts.DipQuestion;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.web.page.Words;

/** What is known of dips, in JSON. */
final class DipAnswer {
    private DipAnswer() {}

    /** @param moreRefused why nothing is estimated for the piece to dip further; empty where that is not so */
    static Map<String, Object> of(DipQuestion question, @Nullable Lab target, String moreRefused) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("cloth", question.group().cloth());
        answer.put("vat", question.group().vat());
        answer.put("uncalibrated", question.uncalibrated());
        answer.put("points", question.inOrder().stream().map(DipAnswer::point).toList());
        question.curve().value().ifPresent(fitted -> {
            answer.put("spread", fitted.spread());
            answer.put("averageError", fitted.averageError());
            answer.put("mostDipsSeen", fitted.mostDipsSeen());
        });
        if (question.curve().value().isEmpty()) {
            answer.put("refused", question.curve().refusal());
        }
        if (question.target() != null) {
            answer.put("target", target);
            question.target().value().ifPresent(ks -> answer.put("targetDepth", ks));
            if (question.target().value().isEmpty()) {
                answer.put("targetRefused", question.target().refusal());
            }
        }
        if (question.nearest() != null) {
            Map<String, Object> nearest = point(question.nearest().dyed());
            nearest.put("difference", question.nearest().difference());
            nearest.put("disagrees", question.nearest().disagrees());
            answer.put("nearest", nearest);
        }
        if (question.needed() != null) {
            answer.put("dips", needed(question.needed()));
        }
        if (!moreRefused.isEmpty()) {
            answer.put("moreRefused", moreRefused);
        }
        if (question.more() != null) {
            answer.put("moreDips", needed(question.more()));
        }
        return answer;
    }

    private static Map<String, Object> point(Dyed dyed) {
        Map<String, Object> point = new LinkedHashMap<>();
        point.put("piece", dyed.piece());
        point.put("dips", dyed.dips().text());
        point.put("ground", dyed.ground());
        point.put("calibrated", dyed.calibrated());
        if (!dyed.disagreements().isEmpty()) {
            point.put(
                    "disagreements", dyed.disagreements().stream().map(Words::w).toList());
        }
        return point;
    }

    /** JSON has no infinity: it is left out. */
    private static void put(Map<String, Object> figure, String name, double value) {
        if (Double.isFinite(value)) {
            figure.put(name, value);
        }
    }

    private static Map<String, Object> needed(DipsNeeded needed) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("verdict", needed.verdict().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        answer.put("sentence", Words.w(needed.sentence()));
        put(answer, "best", needed.best());
        put(answer, "low", needed.plausible().low());
        put(answer, "high", needed.plausible().high());
        answer.put(
                "evidence",
                needed.evidence().stream().map(point -> point.source()).toList());
        return answer;
    }
}
