package tenterbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The list of what is shipped, with its licences, is that of what is shipped. */
class LicencesTest {
    private static final Path ROOT = Path.of(System.getProperty("basedir", "")).toAbsolutePath();

    /** `name` | version | licence | notice or text | home. */
    private static final Pattern ROW = Pattern.compile(
            "^\\| `([^`]+)` \\| ([^ |]+) \\| ([^|]+) \\| (-|`[^`]+`) \\| (https://\\S+) \\|$", Pattern.MULTILINE);

    private static Map<String, String> rows(String heading) throws IOException {
        String list = Files.readString(ROOT.resolve("src/docs/licences.md"));
        String section =
                list.substring(list.indexOf("\n## " + heading + "\n") + 1).split("\n## ")[0];
        Map<String, String> rows = new TreeMap<>();
        for (Matcher row = ROW.matcher(section); row.find(); ) {
            assertThat(rows.put(row.group(1), row.group(2))).as(row.group(1)).isNull();
        }
        assertThat(rows).as(heading).isNotEmpty();
        assertThat(section.lines().filter(line -> line.startsWith("| `")).count())
                .as("rows with every column")
                .isEqualTo(rows.size());
        return rows;
    }

    @Test
    void everyLibraryThatIsShippedIsListedWithItsVersionAndNoOther() throws IOException {
        List<String> shipped = Stream.of(Files.readString(ROOT.resolve("target/shipped.txt"))
                        .strip()
                        .split(":"))
                .map(jar -> Path.of(jar).getFileName().toString())
                .sorted()
                .toList();
        List<String> listed = rows("Libraries").entrySet().stream()
                .map(row -> row.getKey() + "-" + row.getValue() + ".jar")
                .sorted()
                .toList();
        assertThat(listed).containsExactlyElementsOf(shipped);
    }

    @Test
    void everyFontThatIsShippedIsListedAndItsLicenceLiesBesideIt() throws IOException {
        TreeSet<String> families = new TreeSet<>();
        for (String folder : List.of("src/main/resources/fonts", "web/fonts")) {
            TreeSet<String> here = new TreeSet<>();
            try (Stream<Path> files = Files.list(ROOT.resolve(folder))) {
                files.map(file -> file.getFileName().toString())
                        .filter(name -> name.endsWith(".ttf") || name.endsWith(".woff2"))
                        .map(LicencesTest::family)
                        .forEach(here::add);
            }
            for (String font : rows("Fonts").keySet()) {
                if (here.contains(font.toLowerCase(Locale.ROOT))) {
                    assertThat(ROOT.resolve(folder).resolve("OFL-" + font + ".txt"))
                            .isRegularFile();
                }
            }
            families.addAll(here);
        }
        assertThat(rows("Fonts").keySet())
                .extracting(font -> font.toLowerCase(Locale.ROOT))
                .containsExactlyElementsOf(families);
    }

    /** As in 'alegreyasans' of 'alegreya-sans-latin-400-normal.woff2' and of 'AlegreyaSans_400Regular.ttf'. */
    private static String family(String file) {
        return file.toLowerCase(Locale.ROOT).replaceFirst("(_|-latin).*", "").replace("-", "");
    }
}
