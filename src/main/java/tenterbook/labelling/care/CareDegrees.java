package tenterbook.labelling.care;

import tenterbook.labelling.rule.Rule;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Temperatures on care labels. */
record CareDegrees(boolean fahrenheitFirst) {
    /** Whole degrees, so that 44.5 is warm still. */
    static String warmth(double celsius, Rule heat) {
        if (celsius <= heat.figure(0)) {
            return "cold";
        }
        return celsius < heat.figure(1) + 1 ? "warm" : "hot";
    }

    static String ironHeat(double celsius, Rule iron) {
        if (celsius < iron.figure(0)) {
            return "cool";
        }
        return celsius < iron.figure(1) ? "warm" : "hot";
    }

    /** The highest temperature of a test; empty where it was not measured. */
    Object atMost(CareTest test) {
        if (!CareEvidence.measured(test)) {
            return "";
        }
        double celsius = CareEvidence.proven(test);
        return fahrenheitFirst ? of(celsius) : celsius(celsius);
    }

    /** In both units, the market's own first. */
    Message of(double celsius) {
        return fahrenheitFirst
                ? Message.of("care.degrees", "first", fahrenheit(celsius), "second", celsius(celsius))
                : Message.of("care.degrees", "first", celsius(celsius), "second", fahrenheit(celsius));
    }

    /** Rounded down, since a printed limit never exceeds the test; the addend compensates the rounding of a conversion. */
    private static Written whole(double value) {
        return NumberWords.decimals(Math.floor(value + 1e-6), 0);
    }

    private static Message celsius(double celsius) {
        return Message.of("care.celsius", "number", whole(celsius));
    }

    private static Message fahrenheit(double celsius) {
        return Message.of("care.fahrenheit", "number", whole(Unit.CELSIUS.convert(celsius, Unit.FAHRENHEIT)));
    }
}
