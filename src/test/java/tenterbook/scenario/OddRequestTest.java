package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.Thorough;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.ledger.file.Progress;

/** Whatever is sent to whichever route, the program answers with a sentence, makes no mistake and goes on. */
class OddRequestTest extends Scenario {
    private static final String FORM = "application/x-www-form-urlencoded";

    private static final List<String> NAMES = List.of("V24-001", "C24-001", "B01", "none");

    private static final List<String> BODIES = List.of(
            "",
            "&&&===",
            "%zz=%zz",
            "order=add+steps.0.charges&id=",
            "order=drop+",
            "version=99999999999999",
            "version=1&steps.9999.dips=4&steps.12345.dips=4",
            "boards.0.use=%2F&cuts.0.cloth=none",
            "steps.0.holes=,,,&steps.0.dips.dips.0.in=now",
            "fold.folds.0.panels=-4&folds.0.axis=none",
            "fold.folds.0.panels=99999999&folds.1.panels=99999999",
            "content.0.percent=1e999&content.0.fibre=silk",
            "states.0.holes.0.across=NaN",
            "photos.0.photo=xyz&photos.1.state=99999999999",
            "number=%00&title=%00",
            "id=%E2%80%AE&name=%E2%80%AE",
            "length=9".repeat(3) + "e400+km",
            "draft=%2F%2F%2F",
            "draft=piece/",
            "pieces=V24-001&kind=none",
            "dyeing=copy+none",
            "dyeing=same+",
            "index=-1",
            "currency=XXX&prefix=%F0%9F%AA%A1");

    /** Counts addresses, so that the names take turns. */
    private int turn;

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Maré", "made.0.clamping", "C24-001");
    }

    private List<String> routes(String method) {
        return wiring.routes().stream()
                .filter(route -> route.startsWith(method + " "))
                .map(route -> route.substring(method.length() + 1))
                .toList();
    }

    /** The route with one of the names, which take turns; with each of them in the thorough run. */
    private List<String> addresses(String route) {
        return Stream.generate(() -> route.replaceAll("\\{[a-z]+\\}", NAMES.get(turn++ % NAMES.size())))
                .limit(Thorough.times(1, NAMES.size()))
                .toList();
    }

    private void assertSound(Map<String, Answer> answers) throws IOException {
        assertThat(answers).isNotEmpty();
        List<String> mistakes = new ArrayList<>();
        answers.forEach((request, answer) -> {
            if (answer.status() >= 500) {
                mistakes.add(request + " -> " + answer.status() + " " + answer.words());
            }
        });
        assertThat(mistakes).isEmpty();
        assertThat(client.get("/").status()).isEqualTo(200);
    }

    @Test
    void anUnknownAddressIsAnsweredByOurPageWithASentenceAndAWayOn() throws IOException {
        for (String path : List.of("/nowhere", "/pieces/V24-001/nowhere", "/style/none.css", "/people/x/y/z")) {
            for (Answer answer : List.of(client.get(path), client.post(path, "a", "b"))) {
                assertThat(answer.status()).as(path).isEqualTo(404);
                assertThat(answer.words())
                        .contains("There is no page at “" + path + "” in this archive.")
                        .doesNotContain("Endpoint");
                assertThat(answer.text()).contains("<a class=\"button\" href=\"/\">");
            }
        }
        Answer json = client.get("/api/nowhere");
        assertThat(json.status()).isEqualTo(404);
        assertThat(json.json().get("error").textValue()).contains("There is no page at “/api/nowhere”");
    }

    @Test
    void everyPageAnswersToOddNamesAndParameters() throws IOException {
        Map<String, Answer> answers = new LinkedHashMap<>();
        long before = wiring.archive().ledger().lastSequence();
        for (String route : routes("GET")) {
            for (String name : List.of(
                    "V24-001",
                    "C24-001",
                    "none",
                    "-",
                    "%00",
                    "%F0%9F%AA%A1",
                    "%E2%80%AE",
                    "a%2Fb",
                    "0".repeat(64),
                    "x".repeat(3000))) {
                String path = route.replaceAll("\\{[a-z]+\\}", name);
                answers.put(path, client.get(path));
            }
            String path = route.replaceAll("\\{[a-z]+\\}", "V24-001");
            for (String query : List.of(
                    "?q=%22unclosed&page=9999999",
                    "?q=*&sort=&size=",
                    "?q=AND+OR+NOT+(((",
                    "?from=none",
                    "?pieces=,,,",
                    "?colour=%23000000&within=1e9",
                    "?q=" + "x".repeat(500),
                    "?text=%00&unit=",
                    "?%",
                    "?q=%zz",
                    "?q=%ff",
                    "?all=1&role=none",
                    "?kind=&market=&sheet=&price=%00")) {
                answers.put(path + query, client.get(path + query));
            }
        }
        assertSound(answers);
        assertThat(wiring.archive().ledger().lastSequence())
                .as("looking writes nothing")
                .isEqualTo(before);
    }

    @Test
    void everyFormAnswersToOddBodies() throws IOException {
        Map<String, Answer> answers = new LinkedHashMap<>();
        for (String route : routes("POST")) {
            if (route.startsWith("/studio/")) {
                continue; // long work takes no body
            }
            for (String body : BODIES) {
                for (String path : addresses(route)) {
                    answers.put(
                            path + " " + body,
                            client.send("POST", path, body.getBytes(StandardCharsets.UTF_8), "Content-Type", FORM));
                }
            }
            for (String path : addresses(route)) {
                answers.put(
                        path + " bytes",
                        client.send("POST", path, new byte[] {(byte) 0xff, 0, '='}, "Content-Type", FORM));
                answers.put(
                        path + " no type",
                        client.send("POST", path, "number=V24-050".getBytes(StandardCharsets.US_ASCII)));
                for (String type : List.of(
                        "multipart/form-data",
                        "multipart/form-data; boundary=x",
                        "application/json",
                        "text/plain; charset=none")) {
                    answers.put(
                            path + " " + type,
                            client.send(
                                    "POST", path, "--y\r\n".getBytes(StandardCharsets.US_ASCII), "Content-Type", type));
                }
            }
        }
        assertSound(answers);
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED)).isEmpty();
        for (String page : Stream.of(
                        "/",
                        "/clampings",
                        "/boards",
                        "/materials",
                        "/people",
                        "/studio",
                        "/pieces/new",
                        "/clampings/new",
                        "/history/clamping/C24-001",
                        "/history/piece/V24-001")
                .toList()) {
            assertThat(client.get(page).status()).as(page).isEqualTo(200);
        }
    }
}
