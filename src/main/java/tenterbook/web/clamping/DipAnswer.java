package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Interval;
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
        answer.put("scale", w("dips.scale", "band", question.channel().band()));
        answer.put("uncalibrated", question.uncalibrated());
        answer.put("borrowed", question.borrowed());
        answer.put("points", question.inOrder().stream().map(DipAnswer::point).toList());
        question.curve().value().ifPresent(fitted -> {
            answer.put("formula", "K/S(n) = c + A(1 − e^(−b n))");
            answer.put("c", figure(fitted.curve().base(), fitted.base()));
            answer.put("A", figure(fitted.curve().rise(), fitted.rise()));
            answer.put("b", figure(fitted.curve().rate(), fitted.rate()));
            answer.put("residualSpread", fitted.residualSpread());
            fitted.leaveOneOutError().ifPresent(error -> answer.put("leaveOneOutError", error));
            answer.put("mostDipsSeen", fitted.mostDipsSeen());
        });
        if (question.curve().value().isEmpty()) {
            answer.put("refused", question.curve().refusal());
        }
        if (question.target() != null) {
            answer.put("target", target);
            question.target().value().ifPresent(shade -> answer.put("targetDepth", shade.ks()));
            if (question.target().value().isEmpty()) {
                answer.put("targetRefused", question.target().refusal());
            }
        }
        if (question.nearest() != null) {
            Map<String, Object> nearest = point(question.nearest().dyed());
            nearest.put("difference", question.nearest().difference());
            answer.put("nearest", nearest);
        }
        if (question.needed() != null) {
            answer.put("dips", needed(question.needed()));
        }
        if (!moreRefused.isEmpty()) {
            answer.put("moreRefused", moreRefused);
        }
        if (question.more() != null) {
            question.more().value().ifPresent(more -> answer.put("moreDips", needed(more)));
            if (question.more().value().isEmpty()) {
                answer.put("moreRefused", question.more().refusal());
            }
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

    private static Map<String, Object> figure(double value, Interval interval) {
        Map<String, Object> figure = new LinkedHashMap<>();
        figure.put("value", value);
        put(figure, "low", interval.low());
        put(figure, "high", interval.high());
        return figure;
    }

    /** JSON has no infinity: an end that the points do not bound is left out. */
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
