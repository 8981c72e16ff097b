package tenterbook.colour.target;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import tenterbook.colour.space.Lab;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * The published colours of the classic chart of 24 patches, four rows of six from dark skin to black, as new: a chart fades and
 * soils.
 *
 * @see "Source lines in the resource colour/chart24_lab_d50.csv"
 */
public enum ChartReference implements Worded {
    BEFORE_NOVEMBER_2014(2),
    FROM_NOVEMBER_2014(5);

    static final int ROWS = 4;
    static final int COLUMNS = 6;
    static final int PATCHES = ROWS * COLUMNS;

    private final List<Patch> patches;

    /**
     * @param number 1 to 24
     * @param lab CIELAB, D65 (adapted from the published D50 by the Bradford transform), 2° observer
     */
    public record Patch(int number, String name, Lab lab) {}

    ChartReference(int column) {
        this.patches = read(column);
    }

    /** All 24, in order. */
    public List<Patch> patches() {
        return patches;
    }

    @Override
    public Message word() {
        return Message.of("card.chart." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    @Override
    public String toString() {
        return inEnglish();
    }

    private static List<Patch> read(int column) {
        try (InputStream in = ChartReference.class.getResourceAsStream("/colour/chart24_lab_d50.csv");
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("patch"))
                    .map(line -> patch(line.split(","), column))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("The table of chart colours could not be read", e);
        }
    }

    private static Patch patch(String[] cells, int column) {
        Lab d50 = new Lab(
                Double.parseDouble(cells[column]),
                Double.parseDouble(cells[column + 1]),
                Double.parseDouble(cells[column + 2]));
        return new Patch(Integer.parseInt(cells[0]), cells[1], WhitePoint.D50.adapt(d50, WhitePoint.D65));
    }
}
