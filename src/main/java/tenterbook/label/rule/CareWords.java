package tenterbook.label.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;

/**
 * Care in words, from recorded tests alone. A treatment is offered only where a test of it passed, and forbidden only where
 * a test of it failed; nothing is inferred from one to the other. Temperatures are the test's own and greatest ones.
 *
 * @param lines as printed, in order; never empty
 * @param questions what the tests leave open
 */
public record CareWords(List<CareLine> lines, List<Question> questions) {
    /** What stands on paper where no judged test is on record. */
    public static final String NO_TEST = "No care test is on record. Ask the maker before washing.";

    public CareWords {
        lines = List.copyOf(lines);
        questions = List.copyOf(questions);
    }

    public static CareWords of(List<CareTest> tests, Market market) {
        return new Writing(tests, market.rules()).words();
    }

    private static final class Writing {
        private final List<CareTest> tests;
        private final RuleTable rules;
        private final Rule rule;
        private final List<CareLine> lines = new ArrayList<>();
        private final List<Question> questions = new ArrayList<>();

        Writing(List<CareTest> tests, RuleTable rules) {
            this.tests = tests;
            this.rules = rules;
            this.rule = rules.rule("care");
        }

        CareWords words() {
            wash();
            dryClean();
            iron();
            warnings();
            tests.stream()
                    .filter(t -> t.passed() == null)
                    .map(t -> new Question(
                            "Did the %s pass? It is not judged, so nothing is printed from it".formatted(evidence(t)),
                            rule))
                    .forEach(questions::add);
            boolean spoken = tests.stream().anyMatch(t -> t.passed() != null && treats(t.kind()));
            if (!spoken) {
                lines.add(
                        0,
                        new CareLine(NO_TEST, "no judged test of washing, dry cleaning or ironing is on record", rule));
                questions.add(new Question(
                        "Is there a wash test of a strip dyed with this piece? No care words can be printed without one",
                        rule));
            }
            return new CareWords(lines, questions);
        }

        private void wash() {
            List<CareTest> machine = judged(Kind.MACHINE_WASH, true);
            List<CareTest> hand = judged(Kind.HAND_WASH, true);
            List<CareTest> machineFailed = judged(Kind.MACHINE_WASH, false);
            List<CareTest> handFailed = judged(Kind.HAND_WASH, false);
            Optional<CareTest> byHand = highest(hand, handFailed);
            Optional<CareTest> byMachine = handFailed.isEmpty() ? highest(machine, machineFailed) : Optional.empty();
            if (byMachine.isPresent()) {
                lines.add(washLine("Machine wash", byMachine.get()));
            } else if (byHand.isPresent()) {
                lines.add(washLine("Hand wash", byHand.get()));
                if (!machineFailed.isEmpty()) {
                    lines.add(line("Do not machine wash.", machineFailed.get(0)));
                }
            } else if (!handFailed.isEmpty()) {
                lines.add(line("Do not wash.", handFailed.get(0)));
            } else if (!machineFailed.isEmpty()) {
                lines.add(line("Do not machine wash.", machineFailed.get(0)));
            }
            boolean contradiction = byHand.isEmpty() && !hand.isEmpty() || byMachine.isEmpty() && !machine.isEmpty();
            if (contradiction) {
                questions.add(new Question(
                        "A wash test passed and another failed at the same or a lower temperature; which one holds? Until that is said the warning is printed",
                        rule));
            }
        }

        /** The passed test at the highest temperature below every failed one; one of unknown temperature only where none failed. */
        private Optional<CareTest> highest(List<CareTest> passed, List<CareTest> failed) {
            double limit = failed.stream()
                    .mapToDouble(t -> measured(t) ? proven(t) : Double.NEGATIVE_INFINITY)
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
            Optional<CareTest> known = passed.stream()
                    .filter(t -> measured(t) && proven(t) < limit)
                    .reduce((a, b) -> proven(b) > proven(a) ? b : a);
            return known.or(() -> failed.isEmpty() ? passed.stream().findFirst() : Optional.empty());
        }

        private CareLine washLine(String how, CareTest test) {
            if (!measured(test)) {
                questions.add(new Question(
                        "At what temperature was the %s made? Without it no temperature can be printed"
                                .formatted(evidence(test)),
                        rules.rule("careWords")));
                return line(how + ". Tested temperature not recorded.", test);
            }
            double celsius = proven(test);
            String warmth = celsius <= 30 ? "cold" : celsius < 45 ? "warm" : "hot";
            if (celsius > 63) {
                questions.add(new Question(
                        "The test was made above 63 °C, the end of 'hot'; is the temperature right?",
                        rules.rule("careWords")));
            }
            String first = rules.fahrenheitFirst() ? fahrenheit(celsius) : whole(celsius) + "\u00a0°C";
            String second = rules.fahrenheitFirst() ? whole(celsius) + "\u00a0°C" : fahrenheit(celsius);
            return new CareLine(
                    "%s %s, at most %s (%s).".formatted(how, warmth, first, second),
                    evidence(test),
                    rules.rule("careWords"));
        }

        private void dryClean() {
            String word = rules.dryClean();
            one(Kind.DRY_CLEAN, word + ".", "Do not %s.".formatted(word.toLowerCase(Locale.ROOT)));
        }

        private void iron() {
            List<CareTest> failed = judged(Kind.IRON, false);
            if (failed.isEmpty()) {
                judged(Kind.IRON, true).stream()
                        .reduce((a, b) -> measured(b) && (!measured(a) || proven(b) > proven(a)) ? b : a)
                        .ifPresent(t -> lines.add(line(
                                measured(t) ? "Iron, at most %s.".formatted(whole(proven(t)) + "\u00a0°C") : "Iron.",
                                t)));
            } else {
                Optional<CareTest> cooler = highest(judged(Kind.IRON, true), failed);
                lines.add(cooler.filter(Writing::measured)
                        .map(t -> line("Iron, at most %s.".formatted(whole(proven(t)) + "\u00a0°C"), t))
                        .orElseGet(() -> line("Do not iron.", failed.get(0))));
            }
        }

        private void warnings() {
            String colour = rules.language().equals("en-US") ? "Color" : "Colour";
            judged(Kind.RUB, false).stream().findFirst().ifPresent(t -> lines.add(line(colour + " may rub off.", t)));
            judged(Kind.WATER, false).stream().findFirst().ifPresent(t -> lines.add(line("Water may mark it.", t)));
            judged(Kind.LIGHT, false).stream()
                    .findFirst()
                    .ifPresent(t -> lines.add(line("Keep out of strong light.", t)));
        }

        private void one(Kind kind, String passed, String failed) {
            List<CareTest> bad = judged(kind, false);
            if (!bad.isEmpty()) {
                lines.add(line(failed, bad.get(0)));
            } else {
                judged(kind, true).stream().findFirst().ifPresent(t -> lines.add(line(passed, t)));
            }
        }

        private List<CareTest> judged(Kind kind, boolean passed) {
            return tests.stream()
                    .filter(t -> t.kind() == kind && t.passed() != null && t.passed() == passed)
                    .toList();
        }

        /** 'Up to 40' does not say that 40 was reached, so it proves no temperature. */
        private static boolean measured(CareTest test) {
            return test.temperature().low() != null;
        }

        private CareLine line(String text, CareTest test) {
            return new CareLine(text, evidence(test), rule);
        }
    }

    private static boolean treats(Kind kind) {
        return switch (kind) {
            case HAND_WASH, MACHINE_WASH, DRY_CLEAN, IRON -> true;
            case RUB, WATER, LIGHT, OTHER -> false;
        };
    }

    /** What a test has shown to be safe: the lower end of a range, in °C. */
    private static double proven(CareTest test) {
        return test.temperature().in(Unit.CELSIUS).low();
    }

    /** Downwards: what is printed as the most is never more than was tested. The small addend undoes a unit's rounding. */
    private static String whole(double value) {
        return "%.0f".formatted(Math.floor(value + 1e-6));
    }

    private static String fahrenheit(double celsius) {
        return whole(Unit.CELSIUS.convert(celsius, Unit.FAHRENHEIT)) + "\u00a0°F";
    }

    private static String evidence(CareTest test) {
        StringBuilder words = new StringBuilder(test.kind() + " test");
        if (test.when().recorded()) {
            words.append(" of ").append(test.when());
        }
        if (test.temperature().recorded()) {
            words.append(" at ").append(test.temperature());
        }
        if (!test.method().isEmpty()) {
            words.append(" (").append(test.method()).append(')');
        }
        if (!test.result().isEmpty()) {
            words.append(": ").append(test.result());
        }
        return words.toString();
    }
}
