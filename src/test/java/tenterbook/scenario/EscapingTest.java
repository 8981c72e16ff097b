package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What was typed comes back as text, whatever it holds. */
class EscapingTest extends Scenario {
    private static final String TITLE = "<script>alert(1)</script> \"quoted\" 'so' & \u202Egnp.exe 🪡";
    private static final String NOTES = "</textarea><img src=x onerror=alert(2)> & ‘notes’ \u202E 🧵";
    private static final String CAPTION = "\"><svg onload=alert(3)>";

    private String digest;

    @BeforeEach
    void record() throws IOException {
        studio();
        clamping();
        digest = client.postFiles("/photos", List.of(new Client.Part("files", "<b>x</b>.jpg", Pictures.jpeg(1))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved("/people", "id", "sala", "name", TITLE, "kind", "gallery");
        saved(
                "/pieces",
                "number",
                "V24-001",
                "title",
                TITLE,
                "length",
                "180 cm",
                "made.0.clamping",
                "C24-001",
                "made.0.note",
                NOTES,
                "photos.0.photo",
                digest,
                "photos.0.role",
                "front",
                "photos.0.caption",
                CAPTION,
                "photos.0.state",
                "1",
                "faults.0.kind",
                TITLE,
                "notes",
                NOTES);
    }

    @Test
    void pagesHoldItAsTextAndNeverAsMarkup() throws IOException {
        wiring.archive();
        for (String path : List.of(
                "/",
                "/?q=script",
                "/?q=%3Cscript%3Ealert(1)%3C/script%3E",
                "/?fault=%3Cscript%3Ealert(1)%3C/script%3E",
                "/?dips=%3Cscript%3Ealert(1)%3C/script%3E",
                "/pieces/V24-001",
                "/pieces/V24-001/edit",
                "/pieces/V24-001/photos/" + digest,
                "/history/piece/V24-001",
                "/print?pieces=V24-001&kind=hang-tag&market=eu",
                "/print?pieces=V24-001&kind=exhibition-label&market=eu",
                "/people/sala",
                "/suggestions?q=script",
                "/suggestions?q=%3Cscript",
                "/pieces/%3Cscript%3Ealert(1)%3C%2Fscript%3E",
                "/history/%3Cscript%3E/x",
                "/work/%3Cscript%3E",
                "/lots/new?role=%3Cscript%3Ealert(1)%3C/script%3E")) {
            Answer answer = client.get(path);
            assertThat(answer.text().replaceAll("<script src=\"/[a-z./0-9]+\"( defer| type=\"module\")></script>", ""))
                    .as("%s, %d", path, answer.status())
                    .doesNotContain("<script")
                    .doesNotContain("<img src=x")
                    .doesNotContain("</textarea><img")
                    .doesNotContain("<svg onload")
                    .doesNotContain("\"><svg");
        }
    }

    @Test
    void formsGiveBackEveryCharacter() throws IOException {
        Answer form = client.get("/pieces/V24-001/edit");
        assertThat(form.field("title")).isEqualTo(TITLE);
        assertThat(form.field("notes")).isEqualTo(NOTES);
        assertThat(form.field("photos.0.caption")).isEqualTo(CAPTION);
        assertThat(client.get("/pieces/V24-001").words()).contains(TITLE).contains(NOTES);
        assertThat(client.get("/history/piece/V24-001").words()).contains(TITLE);
    }

    @Test
    void aFormWithFilesKeepsEveryCharacterToo() throws IOException {
        assertThat(client.postFiles("/pieces", List.of(), "number", "V24-002", "title", TITLE, "notes", NOTES)
                        .status())
                .isEqualTo(303);
        assertThat(wiring.archive().piece("V24-002").orElseThrow().title()).isEqualTo(TITLE);
    }

    @Test
    void programsGetItAsJson() throws IOException {
        Answer answer = client.get("/api/pieces/V24-001");
        assertThat(answer.header("Content-Type")).startsWith("application/json");
        assertThat(answer.json().at("/piece/title").textValue()).isEqualTo(TITLE);
        assertThat(client.get("/api/suggestions?q=script").header("Content-Type"))
                .startsWith("application/json");
        Answer error = client.get("/api/pieces/%3Cscript%3E");
        assertThat(error.header("Content-Type")).startsWith("application/json");
        assertThat(error.json().get("error").textValue()).contains("<script>");
    }

    @Test
    void aSentenceCarriedInACookieIsTextToo() throws IOException {
        Answer answer = client.get("/", "Cookie", "said=%3Cscript%3Ealert(1)%3C%2Fscript%3E");
        assertThat(answer.text()).doesNotContain("<script>alert");
        assertThat(client.get("/", "Cookie", "said=%zz").status())
                .as("a cookie that another program on this computer set")
                .isEqualTo(200);
    }
}
