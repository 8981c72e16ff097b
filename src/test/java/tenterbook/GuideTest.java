package tenterbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The guide for developers names classes that exist. */
class GuideTest {
    /** As in `search.find.Scan`: a room and a class. */
    private static final Pattern CLASS = Pattern.compile("`((?:[a-z]+\\.)+[A-Z]\\w+)`");

    @Test
    void everyClassNamedInTheGuideIsThere() throws IOException {
        Path root = Path.of(System.getProperty("basedir", "")).toAbsolutePath();
        Set<String> named = new TreeSet<>();
        Matcher found = CLASS.matcher(Files.readString(root.resolve("DEVELOPERS.md")));
        while (found.find()) {
            named.add(found.group(1));
        }
        Path rooms = root.resolve("src/main/java/tenterbook");
        assertThat(named)
                .hasSizeGreaterThan(40)
                .allSatisfy(name -> assertThat(rooms.resolve(name.replace('.', '/') + ".java"))
                        .isRegularFile());
    }
}
