package tenterbook.label.rule;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The table of fibre names, {@code /label/fibres.csv}. */
final class FibreNames {
    /**
     * One fibre.
     *
     * @param fibre its key
     * @param entries what a maker may write, lower case
     * @param us names printed in the United States, the first unless the maker wrote another; empty where there is none
     * @param eu names printed in the European Union, likewise
     */
    record Fibre(String fibre, List<String> entries, List<String> us, boolean usRead, List<String> eu, boolean euRead) {
        List<String> names(Market market) {
            return market == Market.US ? us : eu;
        }

        boolean read(Market market) {
            return market == Market.US ? usRead : euRead;
        }

        Optional<String> printed(Market market, String entry) {
            List<String> names = names(market);
            return names.stream()
                    .filter(entry::equals)
                    .findFirst()
                    .or(() -> names.stream().findFirst());
        }
    }

    /** Salts of the mordant shelf that share a fibre's name. */
    private static final Pattern SALT =
            Pattern.compile("\\b(alumini?um|alum|iron|ferrous|copper|calcium|sodium) acetate\\b");

    private static final List<Fibre> FIBRES = read();

    private FibreNames() {}

    static List<Fibre> all() {
        return FIBRES;
    }

    static Optional<Fibre> entered(String entry) {
        return FIBRES.stream().filter(f -> f.entries.contains(entry)).findFirst();
    }

    /** Fibres named as words of a text, as in a title or the name of a cloth. */
    static List<Fibre> namedIn(String text) {
        String words = text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]+", " ");
        String plain = " " + SALT.matcher(words).replaceAll(" ") + " ";
        return FIBRES.stream()
                .filter(f -> f.entries.stream().anyMatch(e -> plain.contains(" " + e + " ")))
                .toList();
    }

    private static List<Fibre> read() {
        List<Fibre> fibres = new ArrayList<>();
        try (var in = new BufferedReader(new InputStreamReader(
                FibreNames.class.getResourceAsStream("/label/fibres.csv"), StandardCharsets.UTF_8))) {
            in.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("fibre,"))
                    .map(line -> line.split(",", -1))
                    .forEach(c -> fibres.add(new Fibre(
                            c[0], names(c[1]), names(c[2]), c[3].equals("read"), names(c[4]), c[6].equals("read"))));
        } catch (IOException e) {
            throw new UncheckedIOException("The table of fibre names cannot be read", e);
        }
        return List.copyOf(fibres);
    }

    private static List<String> names(String cell) {
        return cell.isEmpty() ? List.of() : List.of(cell.split("\\|"));
    }
}
