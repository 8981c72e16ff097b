package tenterbook.imaging;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.cloth.ClothFinder;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.measure.Digest;

/** The rows of a {@link ClothTable} in SQLite. Thread-safe. */
final class ClothRows implements AutoCloseable {
    /** Rises with the finder, and by itself where the same outline may give other colours: 2 since cards in it do not count. */
    private static final int VERSION = 100 * ClothFinder.VERSION + 2;

    private static final String CREATE = """
            CREATE TABLE IF NOT EXISTS seen (
                photo TEXT NOT NULL, drawn TEXT NOT NULL, edge TEXT NOT NULL, measured REAL NOT NULL,
                outline TEXT NOT NULL, palette TEXT NOT NULL,
                PRIMARY KEY (photo, drawn)) WITHOUT ROWID""";

    /** Photographs whose cloth nobody has taken over yet. */
    private static final String WAITING = "CREATE TABLE IF NOT EXISTS waiting (photo TEXT PRIMARY KEY) WITHOUT ROWID";

    private final DerivedTable table;

    /** @param file null for rows in memory */
    ClothRows(@Nullable Path file) {
        this.table = new DerivedTable(file, VERSION, "seen", List.of(CREATE, WAITING));
    }

    /**
     * What a row of a photograph depends on beside its picture.
     *
     * @param drawn the outline in its record; empty where nobody drew one
     * @param cards those that a person marked on it
     */
    static String key(List<Corner> drawn, List<Region> cards) {
        StringBuilder key = new StringBuilder(text(drawn));
        cards.forEach(card -> key.append('|').append(text(card.corners())));
        return key.toString();
    }

    /** Photographs whose cloth nobody has taken over yet. */
    synchronized Set<Digest> waiting() {
        return handle().createQuery("SELECT photo FROM waiting")
                .mapTo(String.class)
                .map(Digest::new)
                .collect(Collectors.toSet());
    }

    synchronized void await(Digest photo) {
        handle().execute("INSERT OR IGNORE INTO waiting (photo) VALUES (?)", photo.hex());
    }

    synchronized void taken(Collection<Digest> photos) {
        photos.forEach(photo -> handle().execute("DELETE FROM waiting WHERE photo = ?", photo.hex()));
    }

    synchronized @Nullable SeenCloth kept(Digest photo, String key) {
        return handle().select(
                        "SELECT edge, measured, outline, palette FROM seen WHERE photo = ? AND drawn = ?",
                        photo.hex(),
                        key)
                .map((row, context) -> new SeenCloth(
                        new ClothOutline(Edge.valueOf(row.getString(1)), corners(row.getString(3)), row.getDouble(2)),
                        colours(row.getString(4))))
                .findOne()
                .orElse(null);
    }

    synchronized void keep(Digest photo, String key, SeenCloth seen) {
        handle().execute(
                        "INSERT OR REPLACE INTO seen (photo, drawn, edge, measured, outline, palette)"
                                + " VALUES (?, ?, ?, ?, ?, ?)",
                        photo.hex(),
                        key,
                        seen.outline().edge().name(),
                        seen.outline().measured(),
                        text(seen.outline().corners()),
                        palette(seen.palette()));
    }

    private Handle handle() {
        return table.handle();
    }

    private static String text(List<Corner> corners) {
        StringJoiner text = new StringJoiner(" ");
        corners.forEach(corner -> text.add(corner.x() + "," + corner.y()));
        return text.toString();
    }

    private static List<Corner> corners(String text) {
        return numbers(text).stream().map(n -> new Corner(n[0], n[1])).toList();
    }

    private static String palette(List<PaletteColour> palette) {
        StringJoiner text = new StringJoiner(" ");
        palette.forEach(each -> text.add(each.colour().lightness() + ","
                + each.colour().a() + "," + each.colour().b() + "," + each.share()));
        return text.toString();
    }

    private static List<PaletteColour> colours(String text) {
        return numbers(text).stream()
                .map(n -> new PaletteColour(new Lab(n[0], n[1], n[2]), n[3]))
                .toList();
    }

    private static List<double[]> numbers(String text) {
        List<double[]> numbers = new ArrayList<>();
        for (String group : text.isEmpty() ? new String[0] : text.split(" ")) {
            String[] each = group.split(",");
            double[] read = new double[each.length];
            for (int i = 0; i < read.length; i++) {
                read[i] = Double.parseDouble(each[i]);
            }
            numbers.add(read);
        }
        return numbers;
    }

    @Override
    public synchronized void close() {
        table.close();
    }
}
