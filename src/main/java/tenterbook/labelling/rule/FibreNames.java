package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import tenterbook.measure.OwnTable;

/** The tables of fibre names: {@code /label/fibres.csv}, what a maker writes, and {@code /label/fibre-names.csv}, what is printed. */
final class FibreNames {
    /** What one market prints for one fibre in one language. */
    record Printed(List<String> names, String source, boolean read) {
        static final Printed NONE = new Printed(List.of(), "", false);

        Optional<String> chosen(String entry) {
            return names.stream()
                    .filter(name -> name.equalsIgnoreCase(entry))
                    .findFirst()
                    .or(() -> names.stream().findFirst());
        }
    }

    /**
     * One fibre.
     *
     * @param fibre its key
     * @param entries what a maker may write, lower case
     */
    record Fibre(String fibre, List<String> entries) {
        /** Names printed, the first unless the maker wrote another; none where the market has no name for it. */
        Printed names(Market market, String language) {
            return PRINTED.getOrDefault(key(market.rules().namesOf(), language, fibre), Printed.NONE);
        }

        Optional<String> printed(Market market, String entry) {
            return names(market, "en").chosen(entry);
        }

        boolean read(Market market) {
            return names(market, "en").read;
        }
    }

    /** The key of unknown fibres, which only some markets accept. */
    static final String UNKNOWN = "unknown fibres";

    /** The key of fibres that are not named one by one, as a maker may write it. */
    static final String OTHER = "other fibres";

    /** Mordant salts that share a fibre's name. */
    private static final Pattern SALT =
            Pattern.compile("\\b(alumini?um|alum|iron|ferrous|copper|calcium|sodium) acetate\\b");

    private static final List<Fibre> FIBRES = OwnTable.rows("/label/fibres.csv").stream()
            .map(row -> new Fibre(row.get("fibre"), cell(row, "entries")))
            .toList();
    private static final List<String> ABBREVIATIONS = OwnTable.rows("/label/fibre-abbreviations.csv").stream()
            .map(row -> row.get("abbreviation"))
            .toList();
    private static final Map<String, Printed> PRINTED = printed();

    private FibreNames() {}

    static List<Fibre> all() {
        return FIBRES;
    }

    static Optional<Fibre> entered(String entry) {
        return FIBRES.stream().filter(f -> f.entries.contains(entry)).findFirst();
    }

    static boolean abbreviated(String entry) {
        return entry.contains(".") || entry.contains("*") || entry.equals("\"") || ABBREVIATIONS.contains(entry);
    }

    /** Fibres named as words of a text, as in a title or the name of a cloth. */
    static List<Fibre> namedIn(String text) {
        String words = text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]+", " ");
        String plain = " " + SALT.matcher(words).replaceAll(" ") + " ";
        return FIBRES.stream()
                .filter(f -> f.entries.stream().anyMatch(e -> plain.contains(" " + e + " ")))
                .toList();
    }

    private static Map<String, Printed> printed() {
        Map<String, Printed> all = new LinkedHashMap<>();
        for (CSVRecord row : OwnTable.rows("/label/fibre-names.csv")) {
            String key = key(Market.valueOf(row.get("market")), row.get("language"), row.get("fibre"));
            all.put(key, new Printed(cell(row, "names"), row.get("source"), "read".equals(row.get("status"))));
        }
        return all;
    }

    private static String key(Market market, String language, String fibre) {
        return market + "/" + language + "/" + fibre;
    }

    private static List<String> cell(CSVRecord row, String column) {
        return new ArrayList<>(Arrays.asList(row.get(column).split("\\|")))
                .stream().filter(name -> !name.isEmpty()).toList();
    }
}
