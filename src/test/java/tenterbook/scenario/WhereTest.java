package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Where the results show a colour, what of a photograph counts, and the plane of colours. */
class WhereTest extends Scenario {
    private String photographed(String number, String role, byte[] front, byte[]... others) throws IOException {
        List<String> fields = new java.util.ArrayList<>(List.of("number", number));
        String first = "";
        for (int i = 0; i <= others.length; i++) {
            byte[] picture = i == 0 ? front : others[i - 1];
            String digest = client.postFiles("/photos", List.of(new Client.Part("files", i + ".jpg", picture)))
                    .json()
                    .get(0)
                    .get("digest")
                    .textValue();
            first = i == 0 ? digest : first;
            fields.addAll(List.of(
                    "photos." + i + ".photo",
                    digest,
                    "photos." + i + ".role",
                    i == 0 ? "front" : role,
                    "photos." + i + ".state",
                    "1"));
        }
        saved("/pieces", fields.toArray(String[]::new));
        return first;
    }

    private static byte[] hung() throws IOException {
        return Pictures.hung(new Color(0xe0d6c6), new Color(0x345a94));
    }

    private static byte[] sample(String beginning) throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("sample-archive/data/photos"))) {
            return files.filter(file -> file.getFileName().toString().startsWith(beginning))
                    .findFirst()
                    .map(file -> {
                        try {
                            return Files.readAllBytes(file);
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    })
                    .orElseThrow();
        }
    }

    @Test
    void resultsOfAColourSearchShowWhereItIs() throws IOException {
        String digest = photographed("V24-001", "detail", hung());
        String page = client.get("/?colour=%23345a94&within=8").text();
        Matcher where = Pattern.compile("src=\"(/photos/" + digest + "/where\\?[^\"]+)\"")
                .matcher(page);
        assertThat(where.find()).isTrue();
        Answer drawn = client.get(where.group(1).replace("&amp;", "&"));
        assertThat(drawn.header("Content-Type")).startsWith("image/svg+xml");
        assertThat(drawn.header("Cache-Control")).contains("max-age");
        assertThat(drawn.text()).contains("d=\"M");
        assertThat(client.get("/photos/" + digest + "/where?colour=60,50,40").text())
                .contains("d=\"\"");
        // The wall is no cloth, but it is in the photograph.
        assertThat(client.get("/photos/" + digest + "/where?colour=%23e0d6c6").text())
                .contains("d=\"\"");
        assertThat(client.get("/photos/" + digest + "/where?colour=%23e0d6c6&in=photograph")
                        .text())
                .contains("d=\"M");
        assertThat(client.get("/photos/" + digest + "/where?colour=x").status()).isEqualTo(400);
        assertThat(client.get("/?q=V24").text()).doesNotContain("/where?");
    }

    @Test
    void aCloseViewGivesTheColoursWhereTheEdgeOfTheClothIsNotFound() throws IOException {
        // A photograph of the sample on which the outline is too ragged, and one that is all cloth, with a grey card on
        // it.
        photographed("V24-001", "detail", sample("117c4eca95"), sample("2675496346"));
        Answer page = client.get("/pieces/V24-001");
        assertThat(page.words()).contains("colours of a close view").contains("outlines the cloth");
        assertThat(page.text()).contains("class=\"band\"");
        photographed("V24-002", "at work", sample("117c4eca95"), sample("2675496346"));
        assertThat(client.get("/pieces/V24-002").words()).doesNotContain("close view");
    }

    @Test
    void thePlaneDrawsTheClothOfWhatNobodyNamedAndSaysOfHowManyNoColourIsKnown() throws IOException {
        String digest = photographed("V24-001", "detail", hung());
        saved("/pieces", "number", "V24-002");
        Answer plane = client.get("/colours");
        assertThat(plane.words())
                .contains("Of 1 piece nobody named a colour")
                .contains("Of 1 piece no colour is known");
        assertThat(plane.text()).contains("V24-001").contains("fill=\"#3");
        saved("/pieces/V24-001/photos/" + digest + "/colours", "role", "ground", "colour", "30,-1,-22");
        Answer named = client.get("/colours");
        assertThat(named.words()).doesNotContain("nobody named a colour").contains("Of 1 piece no colour is known");
        assertThat(client.get("/colours?role=resist").words()).contains("Of 2 pieces nobody named the resist");
    }
}
