package tenterbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The guides name what exists: classes, tests, files, and the version of the program. */
class GuideTest {
    private static final Path ROOT = Path.of(System.getProperty("basedir", "")).toAbsolutePath();

    /** As in `search.find.Scan`: a room and a class. */
    private static final Pattern CLASS = Pattern.compile("`((?:[a-z]+\\.)+[A-Z]\\w+)`");

    /** As in `GuardTest#loopbackNamesAreOurOwn` or `GuardTest`. */
    private static final Pattern TEST = Pattern.compile("`(\\w+Test)(?:#(\\w+))?`");

    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)(?:#[^)]*)?\\)");

    private static final Pattern REQUIREMENT =
            Pattern.compile("^\\| (\\d+\\.\\d+\\.\\d+) \\| (.+) \\| (.+) \\| (.+) \\|$", Pattern.MULTILINE);

    /** Level 1 of OWASP ASVS 5.0.0, read in its published table (docs_en, column L). */
    private static final String LEVEL_1 = "1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.5.1 2.1.1 2.2.1 2.2.2 2.3.1 "
            + "3.2.1 3.2.2 3.3.1 3.4.1 3.4.2 3.5.1 3.5.2 3.5.3 4.1.1 4.4.1 5.2.1 5.2.2 5.3.1 5.3.2 "
            + "6.1.1 6.2.1 6.2.2 6.2.3 6.2.4 6.2.5 6.2.6 6.2.7 6.2.8 6.3.1 6.3.2 6.4.1 6.4.2 "
            + "7.2.1 7.2.2 7.2.3 7.2.4 7.4.1 7.4.2 8.1.1 8.2.1 8.2.2 8.3.1 9.1.1 9.1.2 9.1.3 9.2.1 "
            + "10.4.1 10.4.2 10.4.3 10.4.4 10.4.5 11.3.1 11.3.2 11.4.1 12.1.1 12.2.1 12.2.2 13.4.1 "
            + "14.2.1 14.3.1 15.1.1 15.2.1 15.3.1";

    private static String text(String file) throws IOException {
        return Files.readString(ROOT.resolve(file));
    }

    private static Map<String, String> guides() throws IOException {
        Map<String, String> guides = new TreeMap<>();
        for (String file : List.of("README.md", "DEVELOPERS.md")) {
            guides.put(file, text(file));
        }
        try (Stream<Path> docs = Files.list(ROOT.resolve("src/docs"))) {
            for (Path doc : docs.filter(file -> file.toString().endsWith(".md")).toList()) {
                guides.put(ROOT.relativize(doc).toString(), Files.readString(doc));
            }
        }
        assertThat(guides).containsKeys("src/docs/changes.md", "src/docs/licences.md", "src/docs/security.md");
        return guides;
    }

    @Test
    void everyClassNamedInTheGuidesIsThere() throws IOException {
        Set<String> named = new TreeSet<>();
        for (String guide : guides().values()) {
            Matcher found = CLASS.matcher(guide);
            while (found.find()) {
                named.add(found.group(1));
            }
        }
        Path rooms = ROOT.resolve("src/main/java/tenterbook");
        assertThat(named)
                .hasSizeGreaterThan(40)
                .allSatisfy(name -> assertThat(rooms.resolve(name.replace('.', '/') + ".java"))
                        .isRegularFile());
    }

    @Test
    void everyTestNamedInTheGuidesIsThere() throws IOException {
        Map<String, String> tests;
        try (Stream<Path> files = Files.walk(ROOT.resolve("src/test/java"))) {
            tests = files.filter(file -> file.toString().endsWith("Test.java"))
                    .collect(Collectors.toMap(
                            file -> file.getFileName().toString().replace(".java", ""),
                            GuideTest::read,
                            String::concat));
        }
        List<String> missing = new ArrayList<>();
        int named = 0;
        for (String guide : guides().values()) {
            for (Matcher test = TEST.matcher(guide); test.find(); named++) {
                String method = test.group(2);
                String source = tests.getOrDefault(test.group(1), "");
                if (source.isEmpty() || method != null && !source.contains(" " + method + "(")) {
                    missing.add(test.group());
                }
            }
        }
        assertThat(missing).isEmpty();
        assertThat(named).isGreaterThan(50);
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyLinkBetweenTheGuidesLeadsToAFile() throws IOException {
        guides().forEach((file, guide) -> {
            for (Matcher link = LINK.matcher(guide); link.find(); ) {
                assertThat(ROOT.resolve(file).resolveSibling(link.group(1)))
                        .as(file + ": " + link.group())
                        .exists();
            }
        });
    }

    @Test
    void everySecurityRequirementOfLevel1HasOneRowWithItsVerdict() throws IOException {
        List<String> numbers = new ArrayList<>();
        for (Matcher row = REQUIREMENT.matcher(text("src/docs/security.md")); row.find(); ) {
            numbers.add(row.group(1));
            assertThat(row.group(3)).as(row.group(1)).isIn("holds", "not applicable", "fails");
            assertThat(row.group(4)).as(row.group(1)).isNotBlank();
        }
        assertThat(numbers).containsExactly(LEVEL_1.split(" "));
    }

    @Test
    void theNewestVersionOfTheChangesIsThatOfTheProgram() throws IOException {
        Matcher pom = Pattern.compile("<artifactId>tenterbook</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(text("pom.xml"));
        Matcher changes = Pattern.compile("(?m)^## (\\d+\\.\\d+\\.\\d+)\\b").matcher(text("src/docs/changes.md"));
        assertThat(pom.find()).isTrue();
        assertThat(changes.find()).isTrue();
        assertThat(changes.group(1)).isEqualTo(pom.group(1));
    }
}
