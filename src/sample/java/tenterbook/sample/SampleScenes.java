package tenterbook.sample;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.sample.SampleColour.Lab;

/** Which cloths and boards there are and which photographs are taken of them, read from two tables. */
final class SampleScenes {
    private SampleScenes() {}

    /** A dyed cloth; the seed follows from its number, so a cloth dyed again keeps its folds and accidents. */
    record Cloth(
            String subject,
            String boardState,
            int across,
            int down,
            ClothKind kind,
            Lab ground,
            Lab undyed,
            List<Scene.LocalColour> local,
            Set<Scene.Fault> faults) {
        long seed() {
            return subject.substring(0, Math.min(7, subject.length())).hashCode() * 31L;
        }
    }

    /** One line of the table of photographs; a board's view is the name of its wood. */
    record Shot(
            String file,
            String subject,
            String view,
            int layer,
            String backdrop,
            int width,
            int height,
            int orientation,
            Scene.Cast cast,
            OffsetDateTime taken,
            String ticket,
            ExifSegment.@Nullable Position position,
            boolean profile) {
        boolean ofBoard() {
            return subject.startsWith("B");
        }

        long seed() {
            return file.hashCode() * 17L;
        }
    }

    static Map<String, Cloth> cloths() {
        Map<String, Cloth> cloths = new LinkedHashMap<>();
        for (String[] f : lines("/sample/cloths.csv", 9)) {
            cloths.put(
                    f[0],
                    new Cloth(
                            f[0],
                            f[1],
                            Integer.parseInt(f[2]),
                            Integer.parseInt(f[3]),
                            ClothKind.valueOf(f[4]),
                            lab(f[5]),
                            lab(f[6]),
                            parts(f[7]).map(SampleScenes::local).toList(),
                            parts(f[8]).map(Scene.Fault::valueOf).collect(Collectors.toSet())));
        }
        return cloths;
    }

    static List<Shot> shots() {
        return lines("/sample/shots.csv", 13).stream()
                .map(f -> new Shot(
                        f[0],
                        f[1],
                        f[2],
                        Integer.parseInt(f[3]),
                        f[4],
                        Integer.parseInt(f[5]),
                        Integer.parseInt(f[6]),
                        Integer.parseInt(f[7]),
                        cast(f[8]),
                        OffsetDateTime.parse(f[9]),
                        f[10],
                        f[11].isEmpty() ? null : position(f[11]),
                        f[12].equals("yes")))
                .toList();
    }

    static Scene scene(Cloth cloth, Shot shot) {
        return new Scene(
                cloth.boardState(),
                cloth.across(),
                cloth.down(),
                cloth.kind(),
                cloth.ground(),
                cloth.undyed(),
                cloth.local(),
                cloth.faults(),
                cloth.seed(),
                Scene.View.valueOf(shot.view()),
                shot.layer(),
                Scene.Backdrop.valueOf(shot.backdrop()),
                shot.cast(),
                shot.width(),
                shot.height(),
                shot.ticket(),
                shot.seed());
    }

    private static Stream<String> parts(String field) {
        return field.isEmpty() ? Stream.empty() : Stream.of(field.split("\\|"));
    }

    private static double[] numbers(String field) {
        return Stream.of(field.split("/")).mapToDouble(Double::parseDouble).toArray();
    }

    private static Lab lab(String field) {
        double[] n = numbers(field);
        return new Lab(n[0], n[1], n[2]);
    }

    private static Scene.Cast cast(String field) {
        double[] n = numbers(field);
        return new Scene.Cast(n[0], n[1], n[2]);
    }

    private static ExifSegment.Position position(String field) {
        double[] n = numbers(field);
        return new ExifSegment.Position(n[0], n[1]);
    }

    private static Scene.LocalColour local(String field) {
        String[] holesAndColour = field.split(":");
        String[] holes = holesAndColour[0].split("-");
        return new Scene.LocalColour(Integer.parseInt(holes[0]), Integer.parseInt(holes[1]), lab(holesAndColour[1]));
    }

    private static List<String[]> lines(String resource, int columns) {
        try (InputStream in = SampleScenes.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("The sample table " + resource + " is not on the class path");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            List<String[]> rows = new ArrayList<>();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    String[] fields = line.split(",", -1);
                    if (fields.length != columns) {
                        throw new IllegalStateException("A line of the sample table " + resource + " should have "
                                + columns + " fields; found " + fields.length + " in: " + line);
                    }
                    rows.add(fields);
                }
            }
            return rows;
        } catch (IOException e) {
            throw new IllegalStateException("The sample table " + resource + " could not be read", e);
        }
    }
}
