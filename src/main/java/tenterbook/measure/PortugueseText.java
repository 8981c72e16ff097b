package tenterbook.measure;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Quantities, dates and layers as a Portuguese writes them, turned into the English words that their readers know: 'cerca de 6 a 8' becomes
 * 'about 6 to 8', '14 de março de 2024' becomes '14 march 2024'. Every word here is none that English uses for something else in these
 * places. Plain vocabulary, from memory.
 */
public final class PortugueseText {
    /** Longer expressions stand before the shorter ones that they hold. */
    private static final List<Map.Entry<Pattern, String>> WORDS = List.of(
            word("cerca de|aproximadamente|aprox\\.?|mais ou menos|por volta de", "about"),
            word("esqueci(?:-me)?", "forgot"),
            word("n[ãa]o sei|n[ãa]o se sabe", "unknown"),
            word("desconhecid[oa]", "unknown"),
            word("pelo menos|no m[íi]nimo", "at least"),
            word("no m[áa]ximo", "at most"),
            word("mais de", "more than"),
            word("menos de", "less than"),
            word("antes de", "before"),
            word("depois de", "after"),
            word("desde", "since"),
            word("de mem[óo]ria", "from memory"),
            word("medid[oa]s?", "measured"),
            word("pesad[oa]s?", "weighed"),
            word("contad[oa]s?", "counted"),
            word("cronometrad[oa]s?", "timed"),
            word("estimad[oa]s?", "estimated"),
            word("tod[oa]s?", "all"),
            word("camadas?", "layers"),
            word("imers(?:ão|ao|ões|oes)", "dips"),
            word("durante a noite|de um dia para o outro", "overnight"),
            word("noites?", "night"),
            word("dias?", "days"),
            word("horas?", "hours"),
            word("minutos?", "minutes"),
            word("segundos?", "seconds"),
            word("metros?", "m"),
            word("gramas?", "g"),
            word("quilos?", "kg"),
            word("litros?", "l"),
            word("janeiro|jan", "january"),
            word("fevereiro|fev", "february"),
            word("mar[çc]o", "march"),
            word("abril|abr", "april"),
            word("maio", "may"),
            word("junho", "june"),
            word("julho", "july"),
            word("agosto|ago", "august"),
            word("setembro|set", "september"),
            word("outubro|out", "october"),
            word("novembro", "november"),
            word("dezembro|dez", "december"),
            word("primavera", "spring"),
            word("ver[ãa]o", "summer"),
            word("outono", "autumn"),
            word("inverno", "winter"),
            Map.entry(
                    Pattern.compile(" de (?=\\d{4}|january|february|march|april|may|june|july|august|september|october|"
                            + "november|december|spring|summer|autumn|winter)"),
                    " "),
            Map.entry(Pattern.compile("^até (?=\\d)"), "up to "),
            Map.entry(
                    Pattern.compile(" (?:a|até) (?=\\d|january|february|march|april|may|june|july|august|september|"
                            + "october|november|december|spring|summer|autumn|winter)"),
                    " to "),
            Map.entry(Pattern.compile("(?<=\\d) e (?=\\d)"), " and "));

    private PortugueseText() {}

    private static Map.Entry<Pattern, String> word(String words, String english) {
        return Map.entry(Pattern.compile("(?U)(?<!\\w)(?:" + words + ")(?!\\w)"), english);
    }

    /** @param plain in lower case, with single spaces */
    public static String english(String plain) {
        String english = plain;
        for (Map.Entry<Pattern, String> word : WORDS) {
            english = word.getKey().matcher(english).replaceAll(word.getValue());
        }
        return english;
    }
}
