package tenterbook.labelling;

import java.util.Arrays;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What an examination records of light: advice, as in '50 lux at most', or a measurement, as in '45 lux measured at noon'. A
 * sentence with a figure in lux is a measurement where nothing in it sets a limit; all else is advice.
 */
final class ExaminationLight {
    private static final Pattern FIGURE = Pattern.compile("(?i)\\d\\s*(lux|lx)\\b");
    private static final Pattern LIMIT = Pattern.compile(
            "(?i)\\b(at most|not more|no more|never|up to|under|below|less than|maximum|max|limit|keep|show|only|within|hours)\\b");

    private ExaminationLight() {}

    static String advice(String recorded) {
        return sentences(recorded, sentence -> !measures(sentence));
    }

    static String measured(String recorded) {
        return sentences(recorded, ExaminationLight::measures);
    }

    private static boolean measures(String sentence) {
        return FIGURE.matcher(sentence).find() && !LIMIT.matcher(sentence).find();
    }

    private static String sentences(String recorded, Predicate<String> wanted) {
        return Arrays.stream(recorded.split("(?<=[.!?])\\s+"))
                .filter(sentence -> !sentence.isBlank())
                .filter(wanted)
                .collect(Collectors.joining(" "));
    }
}
