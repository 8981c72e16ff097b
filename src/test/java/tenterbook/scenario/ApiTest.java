package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;
import tenterbook.measure.Digest;

/** The archive for other programs. */
class ApiTest extends Scenario {
    private static final String DIGEST = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";

    @BeforeEach
    void fill() throws IOException {
        studio();
    }

    @Test
    void aPieceIsRecordedFromPlainTexts() throws IOException {
        Answer answer = client.postJson("/api/pieces", """
                {"title": "Maré", "length": "180 cm", "width": "6 in", "mass": "forgot", "finished": "spring 2024", "price": "180 EUR"}
                """);
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        assertThat(answer.location()).isEqualTo("/api/pieces/V24-001");
        JsonNode piece = client.get(answer.location()).json().get("piece");
        assertThat(piece.at("/length/low").doubleValue()).isEqualTo(180);
        assertThat(piece.at("/width/unit").textValue()).isEqualTo("inch");
        assertThat(piece.at("/mass/entered").textValue()).isEqualTo("forgot");
        assertThat(piece.at("/mass").has("low")).as("forgotten is not zero").isFalse();
        assertThat(piece.at("/finished/from").textValue()).isEqualTo("2024-03-01");
        assertThat(piece.at("/price/amount").textValue()).isEqualTo("180.00");
        assertThat(piece.has("place")).as("what was not sent is not there").isFalse();
        assertThat(wiring.archive()
                        .ledger()
                        .history(Kinds.PIECE.key("V24-001"))
                        .get(0)
                        .json())
                .as("no word is stored for what was not recorded")
                .doesNotContain("category", "status", "not said");
    }

    @Test
    void aPieceReadFromOneArchiveIsRecordedInAnotherAsItIs() throws IOException {
        clamping();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "length",
                "1 1/2 yd",
                "width",
                "about 40 to 45 cm",
                "width.basis",
                "remembered",
                "mass",
                "forgot",
                "finished",
                "spring 2021",
                "price",
                "180.50",
                "made.0.clamping",
                "C24-001",
                "made.0.layers",
                "1-4, 7",
                "tests.0.kind",
                "hand wash",
                "tests.0.temperature",
                "86 °F",
                "events.0.kind",
                "sold",
                "events.0.when",
                "about 2022");
        JsonNode piece = client.get("/api/pieces/V24-001").json().get("piece");
        ObjectNode copy = piece.deepCopy();
        copy.put("number", "V24-002");
        Answer answer = client.postJson("/api/pieces", copy.toString());
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        assertThat(answer.json().get("piece")).isEqualTo(copy);
    }

    @Test
    void layersInPlainTextAreUnderstoodToo() throws IOException {
        clamping();
        Answer answer =
                client.postJson("/api/pieces", "{\"made\": [{\"clamping\": \"C24-001\", \"layers\": \"1-4, 7\"}]}");
        assertThat(answer.status()).isEqualTo(201);
        assertThat(answer.json().at("/piece/made/0/layers/layers")).hasSize(5);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"tilte\": \"Maré\"}",
                "{\"length\": \"5 parsecs\"}",
                "{\"length\": 180}",
                "{\"length\": {\"lenght\": 3}}",
                "{\"status\": \"vanished\"}",
                "{\"number\": \"a/b\"}",
                "{\"photos\": [{\"photo\": \"abc\"}]}",
                "{\"price\": {\"amount\": \"-3\", \"currency\": \"EUR\"}}",
                "{\"price\": \"3 XXXX\"}",
                "{\"finished\": \"the day after never\"}",
                "{\"made\": [{\"clamping\": \"C24-001\", \"layers\": \"some of them\"}]}",
                "{\"length\": {\"low\": 5, \"high\": 5, \"unit\": \"gram\"}}",
                "{\"mass\": {\"entered\": \"5 cm\", \"low\": 5, \"high\": 5, \"unit\": \"centimetre\"}}",
                "{\"width\": {\"low\": 1e308, \"high\": 1e308, \"unit\": \"metre\"}}",
                "{\"width\": {\"low\": -5, \"high\": -5, \"unit\": \"metre\"}}",
                "{\"length\": {\"entered\": \"12 cm\", \"low\": 99, \"high\": 99, \"unit\": \"centimetre\"}}",
                "{\"length\": {\"entered\": \"a lot\"}}",
                "{\"finished\": {\"from\": \"2024-03-05\", \"to\": \"2024-03-05\"}}",
                "{\"finished\": {\"entered\": \"2023\", \"from\": \"2024-01-01\", \"to\": \"2024-12-31\"}}",
                "{\"made\": [{}]}",
                "{\"made\": [{\"clamping\": \"C24-001\", \"layers\": {\"entered\": \"2\", \"layers\": [3]}}]}",
                "{\"photos\": [{}]}",
                "{\"photos\": [{\"photo\": \"" + DIGEST + "\", \"regions\": [{}]}]}",
                "{\"photos\": [{\"photo\": \"" + DIGEST
                        + "\", \"regions\": [{\"colour\": {\"lightness\": 1e9, \"a\": 0, \"b\": 0}}]}]}",
                "{\"photos\": [{\"photo\": \"" + DIGEST
                        + "\", \"regions\": [{\"colour\": {\"lightness\": 50, \"a\": 0, \"b\": 0}, \"corners\": [{\"across\": 7, \"down\": 0}]}]}]}",
                "{\"title\": \"a\", \"title\": \"b\"}",
                "{\"title\": \"a\"} and more",
                "{\"title\": ",
                "[1, 2]",
                "\"Maré\"",
                "",
                "not JSON"
            })
    void whatIsNotUnderstoodIsToldInASentenceAndNothingIsChanged(String body) throws IOException {
        long before = wiring.archive().ledger().lastSequence();
        Answer answer = client.postJson("/api/pieces", body);
        assertThat(answer.status()).as(answer.text()).isEqualTo(400);
        assertThat(answer.json().properties())
                .extracting(java.util.Map.Entry::getKey)
                .isSubsetOf("error", "problems");
        assertThat(answer.json().get("error").textValue())
                .matches("(?s).*[.!?]")
                .doesNotContain("tenterbook.")
                .doesNotContain("java.")
                .doesNotContain("com.fasterxml");
        assertThat(wiring.archive().ledger().lastSequence()).isEqualTo(before);
    }

    @Test
    void theSentenceNamesTheField() throws IOException {
        assertThat(client.postJson("/api/pieces", "{\"tilte\": \"x\"}")
                        .json()
                        .get("error")
                        .textValue())
                .contains("‘tilte’")
                .contains("title");
        assertThat(client.postJson("/api/pieces", "{\"status\": \"vanished\"}")
                        .json()
                        .get("error")
                        .textValue())
                .contains("‘status’")
                .contains("in stock")
                .contains("vanished");
    }

    @Test
    void aNumberGivenBeforeOrANameNotInTheArchiveIsAConflict() throws IOException {
        assertThat(client.postJson("/api/pieces", "{\"number\": \"V24-001\"}").status())
                .isEqualTo(201);
        Answer again = client.postJson("/api/pieces", "{\"number\": \"V24-001\"}");
        assertThat(again.status()).isEqualTo(409);
        assertThat(again.json().get("error").textValue()).contains("V24-001");
        Answer unknown = client.postJson("/api/pieces", "{\"events\": [{\"kind\": \"sold\", \"party\": \"nobody\"}]}");
        assertThat(unknown.status()).isEqualTo(409);
        assertThat(unknown.json().get("error").textValue()).contains("nobody");
        assertThat(client.get("/api/pieces/V99-999").status()).isEqualTo(404);
        assertThat(client.get("/api/pieces/V99-999").json().get("error").textValue())
                .contains("V99-999");
        assertThat(client.get("/api/nothing").json().has("error")).isTrue();
    }

    @Test
    void manyProgramsAtOnceEachGetANumberOfTheirOwn() throws Exception {
        ExecutorService programs = Executors.newFixedThreadPool(6);
        try {
            Callable<Answer> one = () -> client.postJson("/api/pieces", "{\"title\": \"Maré\"}");
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> each : programs.invokeAll(java.util.Collections.nCopies(24, one))) {
                answers.add(each.get());
            }
            assertThat(answers).allSatisfy(answer -> assertThat(answer.status()).isEqualTo(201));
            Set<String> numbers = answers.stream()
                    .map(answer -> answer.json().get("number").textValue())
                    .collect(Collectors.toSet());
            assertThat(numbers).hasSize(24);
            assertThat(client.get("/api/pieces").json().get("total").intValue()).isEqualTo(24);
        } finally {
            programs.shutdownNow();
        }
    }

    private List<String> found(String query) throws IOException {
        Answer answer = client.get("/api/pieces?" + query);
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        List<String> numbers = new ArrayList<>();
        answer.json()
                .get("pieces")
                .forEach(piece -> numbers.add(piece.get("number").textValue()));
        return numbers;
    }

    @Test
    void everyPartOfASearchNarrows() throws IOException {
        clamping();
        saved("/people", "id", "sala-vermia", "name", "Sala Vermia");
        String digest = client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(1))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        assertThat(client.postJson("/api/pieces", """
                {"number": "V24-001", "title": "Figueira", "category": "scarf", "events": [{"kind": "consigned", "party": "sala-vermia"}],
                 "length": "180 cm", "width": "6 in", "price": "180 EUR", "finished": "2024-03", "made": [{"clamping": "C24-001"}],
                 "faults": [{"kind": "leak"}],
                 "photos": [{"photo": "%s", "role": "front", "regions":
                     [{"role": "ground", "colour": {"lightness": 48, "a": -5, "b": -24}, "share": 0.6}]}]}
                """.formatted(digest)).status())
                .isEqualTo(201);
        assertThat(client.postJson("/api/pieces", "{\"number\": \"V24-002\", \"title\": \"Nothing more is known\"}")
                        .status())
                .isEqualTo(201);

        assertThat(found("")).containsExactlyInAnyOrder("V24-001", "V24-002");
        for (String narrowing : List.of(
                "q=figueira",
                "q=leak",
                "board=B01",
                "board=B01/I",
                "cloth=SH",
                "fibre=silk",
                "dye=woad",
                "status=consigned",
                "category=scarf",
                "holder=sala-vermia",
                "year=2024",
                "fault=leak",
                "dips=4..8",
                "dips=4",
                "dips=..4",
                "length=100..200",
                "width=15..16",
                "price=180",
                "price=100..",
                "finished=2024",
                "finished=2024-01..2024-06",
                "colour=48,-5,-24",
                "colour=%232f4a6d&within=5&share=0.4",
                "colour=%2346738f&within=40",
                "board=B01&board=B07",
                "q=figueira&sort=title&page=1&size=1")) {
            assertThat(found(narrowing)).as(narrowing).containsExactly("V24-001");
        }
        for (String missing : List.of(
                "dips=5..",
                "length=..100",
                "width=7",
                "price=..100",
                "finished=2023",
                "year=2023",
                "board=B07",
                "board=B01/II",
                "colour=80,60,60&within=5",
                "colour=%232f4a6d&within=5&share=0.7",
                "mordant=alum",
                "q=figueira&page=2")) {
            assertThat(found(missing)).as(missing).isEmpty();
        }
        JsonNode near = client.get("/api/pieces?colour=48,-5,-24").json().at("/pieces/0");
        assertThat(near.get("distance").doubleValue()).isCloseTo(0, within(1e-9));
        // The picture is half of #2f4a6d; its palette tells the share, to within the marks that make its bytes its own.
        JsonNode blue =
                client.get("/api/pieces?colour=%232f4a6d&within=5").json().at("/pieces/0");
        assertThat(blue.get("share").doubleValue()).isCloseTo(0.5, within(0.06));
    }

    @Test
    void nothingFoundIsAnEmptyListAndNotAMissingOne() throws IOException {
        JsonNode answer = client.get("/api/pieces?q=nothing").json();
        assertThat(answer.get("total").intValue()).isZero();
        assertThat(answer.get("pieces").isArray()).isTrue();
        assertThat(answer.get("facets").isArray()).isTrue();
        assertThat(client.get("/api/suggestions?q=nothing").json().isArray()).isTrue();
        assertThat(client.get("/api/suggestions").status()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/pieces?dips=many",
                "/api/pieces?dips=8..4",
                "/api/pieces?colour=blue",
                "/api/pieces?colour=48,-5,-24&within=41",
                "/api/pieces?colour=48,-5,-24&share=2",
                "/api/pieces?page=0",
                "/api/pieces?size=201",
                "/api/pieces?sort=best",
                "/api/pieces?finished=soon",
                "/api/pieces?dips=1&dips=2",
                "/api/colour/lab",
                "/api/colour/lab?srgb=blue",
                "/api/colour/difference?from=48,-5,-24",
                "/api/colour/difference?first=48,-5,-24",
                "/api/colour/difference?from=48,-5,-24&to=1,2",
                "/api/colour/difference?from=48,-5,-24&to=NaN,0,0",
                "/api/colour/photos/0000000000000000000000000000000000000000000000000000000000000000?illuminant=F2",
                "/api/understood?text=3&unit=cubit"
            })
    void aBadParameterIsToldInASentence(String path) throws IOException {
        Answer answer = client.get(path);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.json().get("error").textValue())
                .hasSizeGreaterThan(20)
                .doesNotContain("java.");
    }

    // IEC 61966-2-1 to CIELAB D65, culori65_L, _a, _b of src/test/resources/colour/srgb_to_lab.csv, rows 255,255,255
    // and
    // 255,0,0; it allows 0.05 between matrix precisions.
    @ParameterizedTest
    @CsvSource({"ffffff,100.0,0.0,0.0", "ff0000,53.24,80.09,67.20"})
    void screenColoursBecomeTheCielabOfTheTable(String srgb, double lightness, double a, double b) throws IOException {
        JsonNode lab = client.get("/api/colour/lab?srgb=" + srgb).json().get("lab");
        assertThat(lab.get("lightness").doubleValue()).isCloseTo(lightness, within(0.05));
        assertThat(lab.get("a").doubleValue()).isCloseTo(a, within(0.05));
        assertThat(lab.get("b").doubleValue()).isCloseTo(b, within(0.05));
    }

    // Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula", Color Res. Appl. 30(1), 2005, table 1, pairs 1, 7
    // and 17.
    @ParameterizedTest
    @CsvSource({
        "'50.0000,2.6772,-79.7751','50.0000,0.0000,-82.7485',2.0425",
        "'50.0000,0.0000,0.0000','50.0000,-1.0000,2.0000',2.3669",
        "'50.0000,2.5000,0.0000','73.0000,25.0000,-18.0000',27.1492"
    })
    void differencesAreThoseOfThePublishedTable(String from, String to, double published) throws IOException {
        JsonNode answer =
                client.get("/api/colour/difference?from=" + from + "&to=" + to).json();
        assertThat(answer.get("difference").doubleValue()).isCloseTo(published, within(1e-4));
        assertThat(client.get("/api/colour/difference?first=" + from + "&second=" + to)
                        .json())
                .isEqualTo(answer);
    }

    /**
     * A plain red picture, IEC 61966-2-1 255,0,0: culori65 and d50 of src/test/resources/colour/srgb_to_lab.csv (the latter
     * adapted by the linear Bradford transform), within the 0.05 it allows.
     */
    @Test
    void aPhotographsColoursAreToldAgainstEitherWhiteAndSayWhich() throws IOException {
        BufferedImage red = new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 60 * 40; i++) {
            red.setRGB(i % 60, i / 60, 0xff0000);
        }
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(red, "png", png);
        String digest = client.postFiles("/photos", List.of(new Client.Part("files", "red.png", png.toByteArray())))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved("/pieces", "number", "V24-001", "photos.0.photo", digest, "photos.0.state", "1");
        saved(
                "/pieces/V24-001/photos/" + digest + "/colours",
                "left",
                "10",
                "top",
                "10",
                "right",
                "90",
                "bottom",
                "90",
                "role",
                "ground");
        for (String[] expected : new String[][] {
            {"", "D65", "53.24", "80.09", "67.20"}, {"?illuminant=d50", "D50", "54.29", "80.80", "69.89"}
        }) {
            JsonNode answer =
                    client.get("/api/colour/photos/" + digest + expected[0]).json();
            assertThat(answer.get("calibrated").booleanValue()).isFalse();
            assertThat(answer.has("calibration")).isFalse();
            JsonNode region = answer.get("regions").get(0);
            assertThat(region.get("piece").textValue()).isEqualTo("V24-001");
            assertThat(region.get("pixels").intValue()).isGreaterThan(1000);
            assertThat(region.has("likelyError"))
                    .as("nothing is known of an uncalibrated error")
                    .isFalse();
            for (JsonNode each : List.of(region, answer.get("palette").get(0))) {
                JsonNode colour = each.get("colour");
                assertThat(colour.get("illuminant").textValue()).isEqualTo(expected[1]);
                assertThat(colour.get("observer").textValue()).isEqualTo("2°");
                assertThat(colour.get("lightness").doubleValue())
                        .isCloseTo(Double.parseDouble(expected[2]), within(0.05));
                assertThat(colour.get("a").doubleValue()).isCloseTo(Double.parseDouble(expected[3]), within(0.05));
                assertThat(colour.get("b").doubleValue()).isCloseTo(Double.parseDouble(expected[4]), within(0.05));
            }
        }
        String page = "/pieces/V24-001/photos/" + digest;
        assertThat(client.get(page).words()).contains("L*a*b* 53, 80, 67 (D65, 2°)");
        assertThat(client.get(page + "?illuminant=D50").words())
                .contains("L*a*b* 54, 81, 70 (D50, 2°)")
                .doesNotContain("(D65, 2°)");
        assertThat(client.get("/api/colour/photos/" + "0".repeat(64)).status()).isEqualTo(404);
    }

    @Test
    void photographsAreAddedToAPieceOnceEach() throws IOException {
        client.postJson("/api/pieces", "{\"number\": \"V24-001\"}");
        byte[] jpeg = Pictures.jpeg(1);
        Answer answer = client.postFiles(
                "/api/pieces/V24-001/photos",
                List.of(new Client.Part("files", "a.jpg", jpeg), new Client.Part("files", "b.jpg", Pictures.jpeg(2))),
                "role",
                "detail",
                "caption",
                "the beak ‘II’");
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        assertThat(answer.json().at("/piece/photos")).hasSize(2);
        assertThat(answer.json().at("/piece/photos/0/photo").textValue())
                .isEqualTo(Digest.of(jpeg).hex());
        assertThat(answer.json().at("/piece/photos/0/caption").textValue()).isEqualTo("the beak ‘II’");
        assertThat(client.postFiles("/api/pieces/V24-001/photos", List.of(new Client.Part("files", "again.jpg", jpeg)))
                        .json()
                        .at("/piece/photos"))
                .hasSize(2);
    }

    @Test
    void photographsThatCannotBeTakenAreToldInASentence() throws IOException {
        client.postJson("/api/pieces", "{\"number\": \"V24-001\"}");
        String path = "/api/pieces/V24-001/photos";
        Client.Part good = new Client.Part("files", "a.jpg", Pictures.jpeg(1));
        Client.Part bad = new Client.Part("files", "b.jpg", "words".getBytes(StandardCharsets.US_ASCII));
        Client.Part large = new Client.Part("files", "c.jpg", new byte[(50 << 20) + 1]);
        assertThat(client.postFiles(path, List.of(good, bad)).status()).isEqualTo(422);
        Answer tooLarge = client.postFiles(path, List.of(large));
        assertThat(tooLarge.status()).isEqualTo(413);
        assertThat(tooLarge.json().get("error").textValue()).contains("50 MB");
        assertThat(client.postFiles(path, List.of()).status()).isEqualTo(400);
        assertThat(client.postJson(path, "{}").status()).isEqualTo(400);
        assertThat(client.postFiles(path, List.of(good), "role", "selfie").status())
                .isEqualTo(400);
        assertThat(client.postFiles("/api/pieces/none/photos", List.of(good)).status())
                .isEqualTo(404);
        assertThat(wiring.archive().piece("V24-001").orElseThrow().photos()).isEmpty();
    }

    @Test
    void aBodyThatIsTooLargeIsRefusedWithASentence() throws IOException {
        Answer answer = client.postJson("/api/pieces", "{\"notes\": \"" + "x".repeat(5 << 20) + "\"}");
        assertThat(answer.status()).isEqualTo(413);
        assertThat(answer.json().get("error").textValue()).contains("too large").contains("Nothing was changed");
        assertThat(wiring.archive().ledger().count(Kinds.PIECE)).isZero();
        assertThat(client.postJson("/api/pieces", "{\"notes\": \"" + "x".repeat(1 << 20) + "\"}")
                        .status())
                .isEqualTo(201);
    }

    @Test
    void aTypedQuantityIsExplained() throws IOException {
        assertThat(client.get("/api/understood?text=6%20in&unit=centimetre")
                        .json()
                        .get("read")
                        .textValue())
                .contains("15.2\u00a0cm");
        assertThat(client.get("/api/understood?text=5%20parsecs&unit=centimetre")
                        .json()
                        .get("problem")
                        .textValue())
                .contains("5 parsecs");
    }
}
