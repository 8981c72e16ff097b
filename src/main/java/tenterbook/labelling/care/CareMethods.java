package tenterbook.labelling.care;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.measure.NumberWords;
import tenterbook.measure.OwnTable;
import tenterbook.piece.CareTest;
import tenterbook.piece.TestStandard;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The table of test methods, {@code /label/care-methods.csv}: what each can show. */
final class CareMethods {
    /**
     * One method.
     *
     * @param fits words of the kinds of test it may be used for; empty for any
     * @param least the grade usually asked of it; null for none
     */
    private record Method(String shows, List<String> fits, Double least, boolean colourAlone, String limits) {}

    private static final Map<String, Method> METHODS = OwnTable.rows("/label/care-methods.csv").stream()
            .collect(Collectors.toMap(
                    row -> row.get("method"),
                    row -> new Method(
                            row.get("shows"),
                            Arrays.stream(row.get("fits").split("\\|"))
                                    .filter(s -> !s.isEmpty())
                                    .toList(),
                            row.get("least").isEmpty() ? null : Double.valueOf(row.get("least")),
                            row.get("colour_alone").equals("yes"),
                            row.get("limits"))));

    private CareMethods() {}

    private static Optional<Method> method(CareTest test) {
        return test.followed().map(TestStandard::toString).map(METHODS::get);
    }

    /** Why a test by a published method cannot be of the kind it is entered as; empty where it can. */
    static Optional<Message> misfit(CareTest test) {
        return method(test)
                .filter(m -> !m.fits.isEmpty() && !m.fits.contains(test.kind().toString()))
                .map(m -> Message.of(
                        "care.misfit",
                        "standard",
                        test.followed().orElseThrow(),
                        "shows",
                        m.shows,
                        "kind",
                        test.kind()));
    }

    /** Whether date, method and result are recorded: a dry cleaning is mostly done by others, so a bare pass shows nothing. */
    static boolean documented(CareTest test) {
        return test.when().recorded()
                && (!test.method().isEmpty() || test.standard() != null)
                && (!test.result().isEmpty() || test.grade() != null);
    }

    /** Whether a pass is no evidence for shrinkage and handle. */
    static boolean colourAlone(CareTest test) {
        return method(test).map(Method::colourAlone).orElse(false);
    }

    /** What a judged test leaves open, as questions. */
    static List<Message> open(CareTest test) {
        return method(test).stream()
                .flatMap(m -> java.util.stream.Stream.of(grade(test, m), limits(test, m)))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Message> grade(CareTest test, Method method) {
        if (test.grade() == null || method.least == null || test.passed() == null) {
            return Optional.empty();
        }
        boolean enough = test.grade() >= method.least;
        if (test.passed() && !enough) {
            return Optional.of(grade("care.ask.is-grade-a-pass", test, method));
        }
        return !test.passed() && enough
                ? Optional.of(grade("care.ask.is-grade-a-failure", test, method))
                : Optional.empty();
    }

    private static Message grade(String key, CareTest test, Method method) {
        return Message.of(
                key,
                "grade",
                test.gradeWords(),
                "least",
                NumberWords.decimals(method.least, 0),
                "standard",
                test.followed().orElseThrow());
    }

    private static Optional<Message> limits(CareTest test, Method method) {
        boolean matters =
                test.kind() == CareTest.Kind.LIGHT ? test.grade() != null : Boolean.TRUE.equals(test.passed());
        return method.limits.isEmpty() || !matters
                ? Optional.empty()
                : Optional.of(Message.of(
                        "care.ask.limits",
                        "kind",
                        Written.capital(test.kind().toString()),
                        "standard",
                        test.followed().orElseThrow(),
                        "limits",
                        method.limits));
    }
}
