package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.measure.Threshold;

/** Every deciding figure stands in one table, is read from there by the code, and is one click from where it shows. */
class FiguresTest extends Scenario {
    private static final Pattern READ = Pattern.compile("(?:Threshold\\.numbers?|measured)\\(\"([a-z-]+)\"");
    private static final Pattern LINKED = Pattern.compile("part\\.source\\(id = \"([a-z-]+)\"");
    private static final Set<String> STATUS = Set.of("our own", "measured", "common practice", "read", "from memory");

    private static Set<String> ids() {
        return Threshold.all().stream().map(Threshold::id).collect(Collectors.toSet());
    }

    private static Set<String> found(String folder, String ending, Pattern pattern) throws IOException {
        try (Stream<Path> files = Files.walk(Path.of(folder))) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .flatMap(file -> matches(file, pattern))
                    .collect(Collectors.toSet());
        }
    }

    private static Stream<String> matches(Path file, Pattern pattern) {
        try {
            List<String> found = pattern.matcher(Files.readString(file))
                    .results()
                    .map((MatchResult match) -> match.group(1))
                    .toList();
            return found.stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void theCodeReadsEveryFigureFromItsRowAndNoRowIsUnread() throws IOException {
        assertThat(found("src/main/java", ".java", READ)).isEqualTo(ids());
        assertThat(Threshold.all()).doesNotHaveDuplicates().hasSameSizeAs(ids());
    }

    @Test
    void everyFigureIsLinkedFromAPageAndEveryLinkHasItsRow() throws IOException {
        assertThat(found("web/pages", ".jte", LINKED)).isEqualTo(ids());
        Answer figures = client.get("/figures");
        assertThat(figures.status()).isEqualTo(200);
        for (Threshold each : Threshold.all()) {
            assertThat(figures.text()).contains("<tr id=\"" + each.id() + "\">");
        }
        assertThat(figures.words()).contains("Sensitivity to light by dye", "blue wool 3–4");
    }

    @Test
    void aFigureSaysWhereItIsFromAndWhatWasReadHasItsPassage() {
        assertThat(Threshold.all()).allSatisfy(each -> {
            assertThat(each.says()).isNotBlank();
            assertThat(STATUS).contains(each.status());
            assertThat(each.status().equals("read")).isEqualTo(!each.passage().isEmpty());
            assertThat(each.status().equals("measured") && each.source().isEmpty())
                    .isFalse();
        });
    }
}
