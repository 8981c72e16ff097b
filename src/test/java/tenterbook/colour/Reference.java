package tenterbook.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Reads a table of reference numbers: comment lines and one heading, then rows of numbers. */
public final class Reference {
    private Reference() {}

    public static List<double[]> rows(String resource) {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Reference.class.getResourceAsStream(resource), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(Reference::numbers)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[] numbers(String line) {
        String[] cells = line.split(",");
        double[] numbers = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            numbers[i] = Double.parseDouble(cells[i]);
        }
        return numbers;
    }
}
