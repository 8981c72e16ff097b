package tenterbook.label.care;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.measure.OwnTable;
import tenterbook.piece.CareTest;
import tenterbook.piece.TestStandard;

/** The table of test methods, {@code /label/care-methods.csv}: what each can show. */
final class CareMethods {
    /**
     * One method.
     *
     * @param fits words of the kinds of test it is one of; empty for any
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
    static Optional<String> misfit(CareTest test) {
        return method(test)
                .filter(m -> !m.fits.isEmpty() && !m.fits.contains(test.kind().toString()))
                .map(m -> "%s tests %s and is no test of ‘%s’"
                        .formatted(test.followed().orElseThrow(), m.shows, test.kind()));
    }

    /** Whether a pass says nothing of shrinkage and handle. */
    static boolean colourAlone(CareTest test) {
        return method(test).map(Method::colourAlone).orElse(false);
    }

    /** What a judged test leaves open, as questions. */
    static List<String> open(CareTest test) {
        return method(test).stream()
                .flatMap(m -> java.util.stream.Stream.of(grade(test, m), limits(test, m)))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<String> grade(CareTest test, Method method) {
        if (test.grade() == null || method.least == null || test.passed() == null) {
            return Optional.empty();
        }
        boolean enough = test.grade() >= method.least;
        String least = "grade %.0f".formatted(method.least);
        if (test.passed() && !enough) {
            return Optional.of("Is grade %s a pass? Usually %s is asked of %s"
                    .formatted(test.gradeWords(), least, test.followed().orElseThrow()));
        }
        return !test.passed() && enough
                ? Optional.of("Is grade %s a failure? Usually %s is enough for %s"
                        .formatted(test.gradeWords(), least, test.followed().orElseThrow()))
                : Optional.empty();
    }

    private static Optional<String> limits(CareTest test, Method method) {
        boolean matters =
                test.kind() == CareTest.Kind.LIGHT ? test.grade() != null : Boolean.TRUE.equals(test.passed());
        return method.limits.isEmpty() || !matters
                ? Optional.empty()
                : Optional.of("Was the rest looked at too? %s by %s: %s"
                        .formatted(
                                capital(test.kind().toString()), test.followed().orElseThrow(), method.limits));
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
