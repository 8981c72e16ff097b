package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;
import tenterbook.archive.Editions;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.piece.edition.InEdition;

/** Numbers of pieces that are chosen and changed, and places in editions; all on one server, each with pieces of its own. */
class NumbersAndEditionsTest {
    @TempDir
    static Path around;

    private static Wiring wiring;
    private static Client client;

    @BeforeAll
    static void serve() throws IOException {
        wiring = Wiring.serve(around.resolve("studio"), 0, Scenario.CLOCK);
        client = new Client(wiring.port());
        saved("/first", "name", "Oficina Valderim", "numbers", "V");
        saved("/people", "id", "sala", "name", "Sala Vermia");
    }

    @AfterAll
    static void close() {
        wiring.close();
    }

    private static String saved(String path, String... namesAndValues) throws IOException {
        Answer answer = client.post(path, namesAndValues);
        assertThat(answer.status()).as(answer.words()).isEqualTo(303);
        return answer.location();
    }

    private Answer put(String number, ObjectNode piece, int version) throws IOException {
        return client.send(
                "PUT",
                "/api/pieces/" + number,
                piece.toString().getBytes(StandardCharsets.UTF_8),
                "Content-Type",
                "application/json",
                "If-Match",
                "\"" + version + "\"");
    }

    @Test
    void aNumberTypedWithASpaceStaysTogetherInAListOfNumbers() throws IOException {
        for (String number : new String[] {"K26-7", "K26-8", "K26-009", "K26"}) {
            saved("/pieces", "number", number, "title", "List " + number);
        }
        assertThat(client.get("/acts/move?pieces=K26%20007%2C%20k26/8%20K26%209")
                        .words())
                .contains("List K26-7", "List K26-8", "List K26-009");
        assertThat(client.get("/acts/move?pieces=K26-7%20K26%20K26-8").words())
                .as("words that name a piece each stay apart")
                .contains("List K26-7", "List K26", "List K26-8");
        assertThat(client.get("/acts/move?pieces=K26%2099").words()).contains("99");
    }

    private ObjectNode json(String number) throws IOException {
        return client.get("/api/pieces/" + number).json().get("piece").deepCopy();
    }

    private Piece piece(String number) {
        return wiring.archive().piece(number).orElseThrow();
    }

    private List<String> found(String question) throws IOException {
        return client.get("/api/pieces?q=" + question).json().get("pieces").findValuesAsText("number").stream()
                .distinct()
                .toList();
    }

    @Test
    void aNumberIsChosenBeforeTheFirstSaveAndAnEmptyRecordUsesNoneUp() throws IOException {
        String next = client.get("/pieces/new").field("number");
        int before = wiring.archive().ledger().count(Kinds.PIECE);
        Answer empty = client.post("/pieces", "number", next, "proposed", next, "title", " ", "length", "");
        assertThat(empty.status()).isEqualTo(422);
        assertThat(empty.words()).contains("no number was used up");
        assertThat(client.postJson("/api/pieces", "{}").status()).isEqualTo(400);
        assertThat(wiring.archive().ledger().count(Kinds.PIECE)).isEqualTo(before);

        saved("/pieces", "number", "V24-507", "proposed", next, "title", "");
        assertThat(client.get("/pieces/new").field("number")).isEqualTo("V24-508");
        assertThat(client.post("/pieces", "number", "v24-507", "title", "Maré").status())
                .as("the same number in small letters")
                .isEqualTo(409);
        assertThat(client.post("/pieces", "number", "V24 9", "title", "Maré").status())
                .isEqualTo(422);
        saved("/pieces", "number", "", "proposed", next, "title", "Maré");
        assertThat(piece("V24-508").title()).isEqualTo("Maré");
    }

    @Test
    void aChangedNumberIsShownAndEveryEarlierOneStillLeadsToThePiece() throws IOException {
        saved("/pieces", "number", "V24-017", "title", "Maré");
        saved("/agreements", "id", "A24-001", "kind", "loan", "party", "sala", "pieces.0.piece", "V24-017");
        saved("/pieces/V24-017/edit", "version", "1", "title", "Maré", "numberNow", "K-12");
        saved("/pieces/K-12/edit", "version", "2", "title", "Maré alta", "numberNow", "K-15");

        assertThat(piece("V24-017").shown()).hasToString("K-15");
        for (String number : List.of("V24-017", "K-12", "K-15")) {
            Answer page = client.get("/pieces/" + number);
            assertThat(page.status()).as(number).isEqualTo(200);
            assertThat(page.words()).contains("K-15 Maré alta").contains("Earlier numbers V24-017, K-12");
            assertThat(page.words()).as("what refers to it").contains("A24-001");
            assertThat(client.get("/api/pieces/" + number).json().get("number").textValue())
                    .isEqualTo("V24-017");
            assertThat(client.get("/history/piece/" + number).status()).isEqualTo(200);
        }
        for (String typed : List.of("17", "V24-17", "K-12", "k12", "K-15")) {
            assertThat(found(typed)).as(typed).containsExactly("V24-017");
        }
        assertThat(client.get("/").words()).contains("K-15 Maré alta").doesNotContain("K-12");

        // What is written by a later number names the piece by its first one, so that references stay whole.
        saved("/agreements", "id", "A24-002", "kind", "loan", "party", "sala", "pieces.0.piece", "K-15");
        assertThat(client.postJson("/api/acts/lend", """
                                {"pieces": [{"piece": "K-12"}], "party": "sala", "when": "2024-09-01"}""").status()).isEqualTo(201);
        assertThat(wiring.archive().agreementsOf(piece("K-15").number())).hasSize(2);
        assertThat(piece("V24-017").events()).hasSize(1);
        assertThat(client.get("/print?kind=shelf-tag&pieces=K-12").words()).contains("K-15");

        for (String taken : List.of("K-12", "k-15", "V24-017")) {
            assertThat(client.post("/pieces", "number", taken, "title", "Outra").status())
                    .as(taken)
                    .isEqualTo(409);
            assertThat(client.postJson("/api/pieces", "{\"number\": \"" + taken + "\"}")
                            .status())
                    .isEqualTo(409);
        }
        saved("/pieces", "number", "V24-018", "title", "Outra");
        Answer refused = client.post("/pieces/V24-018/edit", "version", "1", "title", "Outra", "numberNow", "K-12");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("K-12 is or was the number of V24-017");
        ObjectNode other = json("V24-018");
        other.putArray("laterNumbers").add("K-12");
        assertThat(put("V24-018", other, 1).status()).isEqualTo(400);

        saved("/history/piece/K-15/bring-back", "version", "1");
        assertThat(piece("K-12").shown()).as("an undone number stays taken").hasToString("V24-017");
        assertThat(wiring.archive().ledger().check().run(Progress.UNWATCHED)).isEmpty();
    }

    @Test
    void piecesOfAnEditionHaveNumbersOfTheirOwnAndItsPageListsThem() throws IOException {
        saved("/pieces", "number", "E-1", "title", "Maré", "edition", "2 of 9", "editionName", "Maré baixa");
        saved("/pieces", "number", "E-2", "title", "Maré", "edition", "AP 2", "editionName", "maré  baixa");
        Answer refused =
                client.post("/pieces", "number", "E-3", "title", "Maré", "edition", "2/9", "editionName", "MARÉ BAIXA");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("E-1 is already ‘2 of 9’");
        assertThat(client.postJson("/api/pieces", "{\"edition\": \"2/9\", \"editionName\": \"Maré baixa\"}")
                        .text())
                .contains("E-1 is already");
        String[] unread = {"number", "E-3", "edition", "one of the first", "editionName", "Maré baixa"};
        assertThat(client.post("/pieces", unread).words()).contains("is not read as a place");
        saved(
                "/pieces",
                "number",
                "E-3",
                "edition",
                "one of the first",
                "editionName",
                "Maré baixa",
                "keepEdition",
                "yes");
        String page = client.get("/editions?name=mar%C3%A9%20baixa").words();
        assertThat(page)
                .contains("How many 9", "Numbers given 2", "Numbers not given yet 1, 3–9")
                .contains("Artist’s proofs", "AP 2", "Without a place that could be read", "one of the first");
        assertThat(client.get("/editions").words()).contains("Maré baixa 3 pieces");
        assertThat(client.get("/pieces/E-1").words()).contains("2 of 9 number 2 of 9");
    }

    @Test
    void aVersionIsNotBroughtBackWhereAnotherPieceHasItsPlace() throws IOException {
        saved("/pieces", "number", "V24-081", "title", "One", "editionName", "Weirs", "edition", "1 of 5");
        saved("/pieces/V24-081/edit", "version", "1", "title", "One", "editionName", "Weirs", "edition", "2 of 5");
        saved("/pieces", "number", "V24-082", "title", "Two", "editionName", "weirs", "edition", "1 of 5");
        Answer refused = client.post("/history/piece/V24-081/bring-back", "version", "1");
        assertThat(wiring.archive().piece("V24-081").orElseThrow().edition()).isEqualTo("2 of 5");
        assertThat(refused.location()).isEqualTo("/history/piece/V24-081");

        JsonNode editions = client.get("/api/editions?name=WEIRS").json().get("editions");
        assertThat(editions).hasSize(1);
        assertThat(editions.at("/0/name").textValue()).isEqualTo("Weirs");
        assertThat(editions.at("/0/size").intValue()).isEqualTo(5);
        assertThat(editions.at("/0/pieces").findValuesAsText("number")).containsExactly("V24-082", "V24-081");
        assertThat(client.get("/api/editions").json().get("editions").findValuesAsText("name"))
                .contains("Weirs");
        assertThat(client.get("/api/editions?name=none").json().get("editions")).isEmpty();

        saved("/pieces/V24-082/edit", "version", "1", "title", "Two", "editionName", "Weirs", "edition", "3 of 5");
        client.post("/history/piece/V24-081/bring-back", "version", "1");
        assertThat(wiring.archive().piece("V24-081").orElseThrow().edition()).isEqualTo("1 of 5");
    }

    @Test
    void anEditionIsReadOnceForASave() {
        Editions editions = new Editions(wiring.archive());
        assertThat(editions.pieces("Tides")).isSameAs(editions.pieces("tides"));
    }

    @Test
    void anEditionThatGrowsAfterItsFirstSaleAsksAndThenItStandsOnThePapersOfEachPiece() throws IOException {
        saved("/pieces", "number", "G-1", "length", "180 cm", "edition", "2 of 9", "editionName", "Maré");
        saved("/pieces", "number", "G-2", "title", "Maré");
        saved("/pieces", "number", "G-3", "edition", "3 of 10", "editionName", "Maré");
        assertThat(client.postJson("/api/acts/sell", """
                                {"pieces": [{"piece": "G-1"}], "when": "2024-09-01"}""").status()).isEqualTo(201);
        Answer asked = client.post(
                "/pieces/G-2/edit", "version", "1", "title", "Maré", "edition", "10 of 12", "editionName", "Maré");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words()).contains("10 were announced, now 12", "Enlarge the edition, and state it");
        assertThat(client.postJson("/api/pieces", "{\"edition\": \"11 of 12\", \"editionName\": \"Maré\"}")
                        .status())
                .isEqualTo(400);

        saved("/pieces/G-2/edit", "version", "1", "edition", "10 of 12", "editionName", "Maré", "enlarge", "yes");
        for (String number : List.of("G-1", "G-2", "G-3")) {
            assertThat(piece(number).editionOnPapers().inEnglish())
                    .endsWith("(edition enlarged from 10 to 12 after its first sale)");
        }
        assertThat(client.get("/print?kind=exhibition-label&pieces=G-1").words())
                .contains("edition enlarged from 10 to 12");
        assertThat(client.get("/editions?name=Mar%C3%A9").words())
                .contains("Enlarged after the first sale from 10 to 12");
        assertThat(client.postJson(
                                "/api/pieces",
                                "{\"number\": \"G-4\", \"edition\": \"12 of 12\", \"editionName\": \"Maré\"}")
                        .status())
                .isEqualTo(201);
        assertThat(piece("G-4").editionOnPapers().inEnglish())
                .as("a later copy states it too")
                .contains("enlarged from 10 to 12");
        saved("/pieces/G-4/edit", "version", "1", "edition", "", "editionName", "");
        assertThat(piece("G-4").inEdition()).isEqualTo(InEdition.NONE);
    }
}
