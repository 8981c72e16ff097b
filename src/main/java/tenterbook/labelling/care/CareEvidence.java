package tenterbook.labelling.care;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.labelling.rule.RuleTable;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.piece.Specimen;
import tenterbook.words.Message;

/**
 * The relevant tests of a piece and their conclusions. A test on another cloth or dye, one older than the last dyeing, and one
 * by a method that tests something else are not used but asked about. Of two tests the stricter counts.
 */
final class CareEvidence {
    /** The conclusion for one treatment. */
    enum Way {
        ALLOWED,
        FORBIDDEN,
        /** No fitting test. */
        UNKNOWN
    }

    /**
     * The conclusion for one treatment.
     *
     * @param test its evidence; null where unknown
     */
    record Verdict(Way way, CareTest test) {
        static final Verdict UNKNOWN = new Verdict(Way.UNKNOWN, null);

        boolean allowed() {
            return way == Way.ALLOWED;
        }

        boolean forbidden() {
            return way == Way.FORBIDDEN;
        }
    }

    private final CarePractice.@Nullable Limit limit;
    private final List<CareTest> judged = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    CareEvidence(CareCase about, RuleTable rules) {
        this.limit = CarePractice.limit(about).orElse(null);
        Rule method = rules.rule("careMethod");
        Rule care = rules.rule("care");
        for (CareTest test : about.tests()) {
            Optional<Message> misfit = CareMethods.misfit(test);
            if (misfit.isPresent()) {
                questions.add(
                        new Question(Message.of("care.ask.misfit", "why", misfit.get(), "test", words(test)), method));
            } else if (test.passed() == null) {
                questions.add(new Question(Message.of("care.ask.not-judged", "test", words(test)), care));
            } else if (test.specimen() == Specimen.OTHER) {
                questions.add(new Question(Message.of("care.ask.other-specimen", "test", words(test)), care));
            } else if (test.kind() == Kind.DRY_CLEAN && !CareMethods.documented(test)) {
                questions.add(new Question(Message.of("care.ask.bare-dry-clean", "test", words(test)), care));
            } else {
                take(test, about, method, care);
            }
        }
    }

    private void take(CareTest test, CareCase about, Rule method, Rule care) {
        boolean stale = test.when().to() != null
                && about.lastDyed().from() != null
                && test.when().to().isBefore(about.lastDyed().from());
        if (stale) {
            questions.add(new Question(
                    Message.of(
                            "care.ask.stale",
                            "test",
                            words(test),
                            "dyed",
                            about.lastDyed(),
                            "passed",
                            yes(test.passed())),
                    care));
        }
        if (!stale || !test.passed()) {
            judged.add(test);
            CareMethods.open(test).forEach(asks -> questions.add(new Question(asks, method)));
        }
    }

    /** Doubts about the tests themselves. */
    List<Question> questions() {
        return List.copyOf(questions);
    }

    /** Every relevant test. */
    List<CareTest> judged() {
        return List.copyOf(judged);
    }

    List<CareTest> passed(Kind kind) {
        return judged.stream().filter(t -> t.kind() == kind && t.passed()).toList();
    }

    List<CareTest> failed(Kind kind) {
        return judged.stream().filter(t -> t.kind() == kind && !t.passed()).toList();
    }

    /** By machine where that passed and washing by hand did not fail, else by hand; forbidden only where washing by hand failed. */
    Verdict wash() {
        List<CareTest> handFailed = failed(Kind.HAND_WASH);
        Optional<CareTest> machine =
                handFailed.isEmpty() ? highest(passed(Kind.MACHINE_WASH), failed(Kind.MACHINE_WASH)) : Optional.empty();
        Optional<CareTest> allowed = machine.or(() -> highest(passed(Kind.HAND_WASH), handFailed));
        if (allowed.isPresent()) {
            return new Verdict(Way.ALLOWED, allowed.get());
        }
        return handFailed.isEmpty() ? Verdict.UNKNOWN : new Verdict(Way.FORBIDDEN, handFailed.get(0));
    }

    /** Whether a passed wash is contradicted by one that failed at the same or a lower temperature. */
    boolean washContradicted() {
        boolean hand = highest(passed(Kind.HAND_WASH), failed(Kind.HAND_WASH)).isEmpty()
                && !passed(Kind.HAND_WASH).isEmpty();
        boolean machine = !passed(Kind.MACHINE_WASH).isEmpty()
                && (wash().test() == null || wash().test().kind() != Kind.MACHINE_WASH);
        return hand || machine;
    }

    /** A treatment without temperature. */
    Verdict plain(Kind kind) {
        List<CareTest> failed = failed(kind);
        if (!failed.isEmpty()) {
            return new Verdict(Way.FORBIDDEN, failed.get(0));
        }
        return passed(kind).stream()
                .findFirst()
                .map(t -> new Verdict(Way.ALLOWED, t))
                .orElse(Verdict.UNKNOWN);
    }

    /** A treatment that may pass below the temperature at which it failed. */
    Verdict heated(Kind kind) {
        List<CareTest> failed = failed(kind);
        Optional<CareTest> passed = highest(passed(kind), failed);
        if (failed.isEmpty()) {
            return passed.map(t -> new Verdict(Way.ALLOWED, t)).orElse(Verdict.UNKNOWN);
        }
        return passed.filter(CareEvidence::measured)
                .map(t -> new Verdict(Way.ALLOWED, t))
                .orElseGet(() -> new Verdict(Way.FORBIDDEN, failed.get(0)));
    }

    /** The passed test at the highest temperature below every failed one; one of unknown temperature only where none failed. */
    private static Optional<CareTest> highest(List<CareTest> passed, List<CareTest> failed) {
        double limit = failed.stream()
                .mapToDouble(t -> measured(t) ? proven(t) : Double.NEGATIVE_INFINITY)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        Optional<CareTest> known = passed.stream()
                .filter(t -> measured(t) && proven(t) < limit)
                .reduce((a, b) -> proven(b) > proven(a) ? b : a);
        return known.or(() -> failed.isEmpty() ? passed.stream().findFirst() : Optional.empty());
    }

    /** Whether a temperature was reached; 'up to 40' is no evidence that 40 was. */
    static boolean measured(CareTest test) {
        return test.temperature().low() != null;
    }

    /** The temperature shown to be safe: the lower end of a range, in °C. */
    static double proven(CareTest test) {
        return test.temperature().in(Unit.CELSIUS).low();
    }

    /**
     * The warmest wash supported by a test, in °C. A method that tests colour alone is no evidence for shrinkage, so common
     * practice for the materials then limits it.
     */
    double washCelsius(CareTest test) {
        return limited(test) ? limit.celsius() : proven(test);
    }

    /** The evidence of a wash: the test, and the limit if that is lower. */
    Message washWords(CareTest test) {
        return limited(test)
                ? Message.of(
                        "care.kept-to",
                        "test",
                        words(test),
                        "celsius",
                        NumberWords.decimals(limit.celsius(), 0),
                        "why",
                        limit.why())
                : words(test);
    }

    private boolean limited(CareTest test) {
        return measured(test) && CareMethods.colourAlone(test) && limit != null && limit.celsius() < proven(test);
    }

    /** A test in words, as the evidence of a line. */
    static Message words(CareTest test) {
        boolean method = !test.method().isEmpty();
        boolean result = !test.result().isEmpty();
        return Message.of(
                "care.test",
                "kind",
                test.kind(),
                "dated",
                yes(test.when().recorded()),
                "when",
                test.when(),
                "warm",
                yes(test.temperature().recorded()),
                "temperature",
                test.temperature(),
                "placed",
                yes(test.specimen() != null),
                "specimen",
                orNone(test.specimen()),
                "by",
                test.standard() == null ? method ? "method" : "none" : method ? "both" : "standard",
                "standard",
                orNone(test.standard()),
                "method",
                test.method(),
                "seen",
                test.grade() == null ? result ? "result" : "none" : result ? "both" : "grade",
                "grade",
                test.grade() == null ? "" : test.gradeWords(),
                "result",
                test.result());
    }

    static String yes(boolean holds) {
        return holds ? "yes" : "no";
    }

    private static Object orNone(Object value) {
        return value == null ? "" : value;
    }
}
