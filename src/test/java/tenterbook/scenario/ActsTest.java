package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceReader;
import tenterbook.facts.Whereabouts;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.piece.agreement.Agreement;
import tenterbook.recipe.Clamping;

/** One act writes the event and all that follows from it, for one piece or several, on pages and for programs. */
class ActsTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        saved("/people", "id", "museu", "name", "Museu do Sarelho", "kind", "museum");
        saved("/pieces", "number", "V24-001", "title", "Figueira", "place", "drawer 4");
        saved("/pieces", "number", "V24-002", "title", "Heron");
    }

    private Piece piece(String number) {
        return wiring.archive().piece(number).orElseThrow();
    }

    private Whereabouts now(String number) {
        return PieceReader.of(wiring.archive(), piece(number)).whereabouts();
    }

    @Test
    void aSaleToSomebodyNewNeedsOneFormAndOffersReceiptAndCertificate() throws IOException {
        assertThat(client.get("/acts/sell?pieces=V24-001").words())
                .contains("V24-001", "Figueira", "Buyer", "Price paid")
                .doesNotContain("Commission");
        Answer asked = client.post(
                "/acts/sell",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.price",
                "180 EUR",
                "when",
                "2024-09-12",
                "party",
                "Ana Reis");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words()).contains("Nobody called “Ana Reis” is recorded", "Record “Ana Reis” as a new person");
        assertThat(asked.text()).contains("value=\"180 EUR\"");
        assertThat(piece("V24-001").events()).isEmpty();

        String next = saved(
                "/acts/sell",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.price",
                "180 EUR",
                "when",
                "2024-09-12",
                "party",
                "Ana Reis",
                "addPerson",
                "Ana Reis");
        assertThat(now("V24-001").status()).isEqualTo(Status.SOLD);
        assertThat(now("V24-001").holder())
                .hasValueSatisfying(id -> assertThat(id).hasToString("ana-reis"));
        assertThat(piece("V24-001").place()).isEmpty();
        assertThat(wiring.archive().party("ana-reis").orElseThrow().name()).isEqualTo("Ana Reis");
        Answer done = client.get(next);
        assertThat(done.words())
                .contains("Certificate of origin", "Print care label", "Received from Ana Reis for", "180\u00a0EUR");
        assertThat(client.get("/pieces/V24-001").words()).contains("sold", "from the event “sold” of 2024-09-12");
    }

    @Test
    void photographingTakesThePhotographsInAndOffersWhatComesNext() throws IOException {
        assertThat(client.get("/acts?pieces=V24-001").text()).contains("/acts/photograph?pieces=V24-001");
        Answer none = client.postFiles("/acts/photograph", List.of(), "pieces.0.piece", "V24-001");
        assertThat(none.status()).isEqualTo(422);
        assertThat(none.words()).contains("Choose at least one photograph.");
        Client.Part file = new Client.Part("files", "a.jpg", Pictures.jpeg(1));
        Answer asked = client.postFiles(
                "/acts/photograph",
                List.of(file),
                "pieces.0.piece",
                "V24-001",
                "party",
                "Ana Reis",
                "when",
                "2024-09-12");
        assertThat(asked.status()).isEqualTo(422);
        String digest = Digest.of(file.bytes()).hex();
        assertThat(asked.field("photos"))
                .as("taken in already, so that it need not be chosen again")
                .isEqualTo(digest);
        assertThat(piece("V24-001").photos()).isEmpty();
        int version = wiring.archive()
                .ledger()
                .find(Kinds.PIECE, "V24-001")
                .orElseThrow()
                .version();

        Answer done = client.postFiles(
                "/acts/photograph",
                List.of(new Client.Part("files", "b.jpg", Pictures.jpeg(2))),
                "photos",
                digest,
                "pieces.0.piece",
                "V24-001",
                "party",
                "Ana Reis",
                "addPerson",
                "Ana Reis",
                "when",
                "2024-09-12",
                "note",
                "north window");
        assertThat(done.status()).as(done.words()).isEqualTo(303);
        Saved<Piece> now =
                wiring.archive().ledger().find(Kinds.PIECE, "V24-001").orElseThrow();
        assertThat(now.version()).as("photographs and event in one revision").isEqualTo(version + 1);
        assertThat(now.record().photos())
                .extracting(each -> each.role())
                .containsExactly(PhotoRole.FRONT, PhotoRole.DETAIL);
        assertThat(now.record().events()).singleElement().satisfies(event -> {
            assertThat(event.kind()).isEqualTo(EventKind.PHOTOGRAPHED);
            assertThat(event.party()).hasToString("ana-reis");
            assertThat(event.note()).isEqualTo("north window");
        });
        assertThat(client.get(done.location()).text())
                .contains("What can come next", "/pieces/V24-001/photos/", "/pieces/V24-001/condition/new");

        Answer unknown = act(
                "photograph",
                "{\"pieces\": [{\"piece\": \"V24-002\"}], \"photos\": [\"%s\"]}".formatted("0".repeat(64)));
        assertThat(unknown.status()).isEqualTo(400);
        assertThat(unknown.text()).contains("No photograph with the digest");
        Answer programs =
                act("photograph", "{\"pieces\": [{\"piece\": \"V24-002\"}], \"photos\": [\"%s\"]}".formatted(digest));
        assertThat(programs.status()).as(programs.text()).isEqualTo(201);
        assertThat(piece("V24-002").photos()).hasSize(1);
    }

    private Answer act(String act, String json) throws IOException {
        return client.postJson("/api/acts/" + act, json);
    }

    @Test
    void whatWasRecordedWronglyIsPutRightWithItsReasonAndTheOldVersionStays() throws IOException {
        saved("/acts/move", "pieces.0.piece", "V24-001", "when", "2024-09-12", "place", "drawer 5");
        act("sell", "{\"pieces\": [{\"piece\": \"V24-001\", \"price\": \"180 EUR\"}], \"when\": \"2024-09-25\"}");
        assertThat(client.get("/acts?pieces=V24-001").text()).contains("/acts/correct?piece=V24-001");
        assertThat(client.get("/acts/correct?piece=V24-001").words())
                .contains("moved (2024-09-12)", "sold (2024-09-25)");
        Answer form = client.get("/acts/correct?piece=V24-001&event=1");
        assertThat(form.field("price")).isEqualTo("180\u00a0EUR");
        String was = form.field("was");
        Answer without =
                client.post("/acts/correct", "piece", "V24-001", "was", was, "when", "2024-09-26", "price", "170");
        assertThat(without.status()).isEqualTo(422);
        assertThat(without.words()).contains("Say why it is corrected");
        String[] right = {
            "piece",
            "V24-001",
            "was",
            was,
            "when",
            "2024-09-26",
            "price",
            "170",
            "party",
            "museu",
            "reason",
            "misread the book"
        };
        assertThat(saved("/acts/correct", right)).isEqualTo("/pieces/V24-001");
        Event sale = piece("V24-001").events().get(1);
        assertThat(sale.price()).hasToString("170\u00a0EUR");
        assertThat(sale.party()).hasToString("museu");
        assertThat(now("V24-001").holder())
                .hasValueSatisfying(id -> assertThat(id).hasToString("museu"));
        Answer asked = client.get("/acts/correct?piece=V24-001&event=1");
        assertThat(asked.field("party")).isEqualTo("Museu do Sarelho");
        assertThat(asked.text()).contains("id=\"f-price-unit\">EUR<");
        assertThat(client.get("/history/piece/V24-001").words()).contains("Corrected “sold”: misread the book", "180");
        assertThat(client.post("/acts/correct", right).words()).contains("has no event that is recorded so");

        Answer early = correct(
                "{\"kind\": \"moved\", \"when\": \"2024-09-12\", \"place\": \"drawer 5\"}",
                "{\"kind\": \"returned\", \"when\": \"2024-09-12\"}");
        assertThat(early.status()).isEqualTo(400);
        assertThat(early.json().get("problems").findValuesAsText("field")).contains("as.kind");
        Answer done = correct(
                "{\"kind\": \"moved\", \"when\": \"2024-09-12\", \"place\": \"drawer 5\"}",
                "{\"kind\": \"moved\", \"when\": \"2024-09-13\", \"place\": \"drawer 6\"}");
        assertThat(done.status()).as(done.text()).isEqualTo(200);
        assertThat(piece("V24-001").events().get(0).place()).isEqualTo("drawer 6");
    }

    /** As an older form stored it: a person beside a return. What an event holds may be put right; nothing else is added that its act does not ask. */
    @Test
    void aCorrectionAddsNoFieldThatTheActDoesNotAsk() throws IOException {
        act("lend", "{\"pieces\": [{\"piece\": \"V24-001\"}], \"when\": \"2024-09-01\"}");
        act("return", "{\"pieces\": [{\"piece\": \"V24-001\"}], \"when\": \"2024-09-10\"}");
        String back = "{\"kind\": \"returned\", \"when\": \"2024-09-10\"}";
        Answer refused = correct(
                back,
                "{\"kind\": \"returned\", \"when\": \"2024-09-10\", \"until\": \"2024-12-01\", \"party\": \"museu\","
                        + " \"price\": \"9 EUR\", \"place\": \"drawer 5\"}");
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().get("problems").findValuesAsText("field"))
                .containsExactlyInAnyOrder("as.until", "as.party", "as.price");
        assertThat(refused.json().at("/problems/0/problem").textValue())
                .isEqualTo("“Return” does not ask this. It asks kind, when, note, place, unsure.");
        assertThat(client.get("/acts/correct?piece=V24-001&event=1").text())
                .contains("f-place")
                .doesNotContain("f-party", "f-until", "f-price");

        Piece old = Kinds.PIECE
                .codec()
                .fromText("{'number': 'V24-003', 'events': [{'kind': 'washed', 'party': 'museu'}]}".replace('\'', '"'));
        wiring.archive().ledger().write("test", ledger -> ledger.create(Kinds.PIECE, old));
        assertThat(client.get("/acts/correct?piece=V24-003&event=0").text())
                .contains("f-party")
                .doesNotContain("f-place");
        Answer kept = act(
                "correct",
                ("{'piece': 'V24-003', 'was': {'kind': 'washed', 'party': 'museu'},"
                                + " 'as': {'kind': 'washed', 'party': 'museu', 'note': 'cold'}, 'reason': 'more'}")
                        .replace('\'', '"'));
        assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    }

    @Test
    void aCorrectionMayNotLeaveWhatTheActWouldRefuse() throws IOException {
        for (String act : List.of("consign", "lend")) {
            String number = act.equals("lend") ? "V24-002" : "V24-001";
            for (String each : List.of(act + " 2024-01-01", "return 2024-02-01", act + " 2024-03-01")) {
                String[] named = each.split(" ");
                assertThat(act(
                                        named[0],
                                        "{\"pieces\": [{\"piece\": \"%s\"}], \"when\": \"%s\"}"
                                                .formatted(number, named[1]))
                                .status())
                        .isEqualTo(201);
            }
            Answer late = act(
                    "correct",
                    ("{\"piece\": \"%s\", \"was\": {\"kind\": \"returned\", \"when\": \"2024-02-01\"},"
                                    + " \"as\": {\"kind\": \"returned\", \"when\": \"2024-04-01\"}, \"reason\": \"misread\"}")
                            .formatted(number));
            assertThat(late.status()).isEqualTo(400);
            assertThat(late.json().at("/problems/0/field").textValue()).isEqualTo("as.when");
        }
    }

    /** As an older program stored it: lent, typed beside events that say it is back. */
    @Test
    void aCorrectionLooksAtAStatusOfFormerTimesAndAtTheDayOfFinishingAsAnActDoes() throws IOException {
        Piece old = Kinds.PIECE
                .codec()
                .fromText(("{'number': 'V24-003', 'finished': '2023-06-01', 'status': 'on loan', 'events': ["
                                + "{'kind': 'consigned', 'when': '2023-12-01'},"
                                + "{'kind': 'returned', 'when': '2024-01-01', 'unsure': true},"
                                + "{'kind': 'washed', 'when': '2023-05-01', 'unsure': true}]}")
                        .replace('\'', '"')
                        .replaceAll(
                                "(\"finished\"|\"when\"): \"([-0-9]+)\"",
                                "$1: {\"entered\": \"$2\", \"from\": \"$2\", \"to\": \"$2\"}"));
        wiring.archive().ledger().write("test", ledger -> ledger.create(Kinds.PIECE, old));
        String[][] wrong = {
            {"returned", "2024-01-01", "2023-11-01", "true", "recorded as consigned"},
            {"washed", "2023-05-01", "2023-05-01", "false", "before the piece was finished"}
        };
        for (String[] each : wrong) {
            Answer refused = act(
                    "correct",
                    ("{'piece': 'V24-003', 'was': {'kind': '%s', 'when': '%s', 'unsure': true},"
                                    + " 'as': {'kind': '%1$s', 'when': '%3$s', 'unsure': %4$s}, 'reason': 'misread'}")
                            .formatted((Object[]) each)
                            .replace('\'', '"')
                            .replace(", \"unsure\": false", ""));
            assertThat(refused.status()).as(refused.text()).isEqualTo(400);
            assertThat(refused.text()).contains(each[4]);
        }
    }

    private Answer correct(String was, String as) throws IOException {
        return act(
                "correct",
                "{\"piece\": \"V24-001\", \"was\": %s, \"as\": %s, \"reason\": \"misread\"}".formatted(was, as));
    }

    @Test
    void theTaxOfASaleStandsOnItsReceiptAsItWasChargedAndIsNeverComputed() throws IOException {
        Answer asked = client.post("/acts/sell", "pieces.0.piece", "V24-001", "pieces.0.tax", "41.40 EUR");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words()).contains("Choose whether the tax was included in the price or added to it.");
        String next = saved(
                "/acts/sell",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.price",
                "180 EUR",
                "pieces.0.tax",
                "41.40 EUR",
                "pieces.1.piece",
                "V24-002",
                "pieces.1.price",
                "20 EUR",
                "taxWay",
                "added",
                "taxRate",
                "23",
                "when",
                "2024-09-12");
        assertThat(piece("V24-001").events().get(0).tax().amount()).hasToString("41.40\u00a0EUR");
        assertThat(piece("V24-002").events().get(0).tax().amount()).isNull();
        assertThat(client.get(next).words().replace('\u00a0', ' '))
                .contains("tax of 23 % added: 41.40 EUR", "tax of 23 % added Without a total")
                .doesNotContain("4.60", "Total:");
        assertThat(client.get("/acts/sell/done?pieces=V24-001").words().replace('\u00a0', ' '))
                .contains("Total: 221.40 EUR");
        assertThat(client.get("/pieces/V24-001").words().replace('\u00a0', ' '))
                .contains("180 EUR, tax of 23 % added: 41.40 EUR");
    }

    @Test
    void theReceiptOfASaleStaysWithinReachAndSaysThatItReplacesOneThatWasWrong() throws IOException {
        sale("V24-001", "\"price\": \"180 EUR\"");
        sale("V24-002", "\"price\": \"20 EUR\"");
        String receipt = "/acts/receipt?piece=V24-001&event=0";
        assertThat(client.get("/pieces/V24-001").text()).contains(receipt.replace("&", "&amp;"));
        assertThat(client.get(receipt).words().replace('\u00a0', ' '))
                .contains("2024-09-12", "Received from Museu do Sarelho for", "Total: 200 EUR", "Written ")
                .doesNotContain("It replaces");
        Answer done = correct(
                "{\"kind\": \"sold\", \"when\": \"2024-09-12\", \"party\": \"museu\", \"price\": \"180 EUR\"}",
                "{\"kind\": \"sold\", \"when\": \"2024-09-12\", \"party\": \"museu\", \"price\": \"170 EUR\"}");
        assertThat(done.status()).as(done.text()).isEqualTo(200);
        for (String either : List.of(receipt, "/acts/receipt?piece=V24-002&event=0")) {
            assertThat(client.get(either).words().replace('\u00a0', ' '))
                    .contains("Figueira: 170 EUR", "Heron: 20 EUR", "Total: 190 EUR", "It replaces the earlier receipt")
                    .doesNotContain("180 EUR");
        }
        saved("/acts/move", "pieces.0.piece", "V24-001", "when", "2024-09-13", "place", "drawer 5");
        assertThat(client.get("/acts/receipt?piece=V24-001&event=1").status()).isEqualTo(400);
        assertThat(client.get("/acts/receipt?piece=V24-001").status()).isEqualTo(400);
    }

    private void sale(String number, String price) throws IOException {
        assertThat(act(
                                "sell",
                                "{\"pieces\": [{\"piece\": \"%s\", %s}], \"party\": \"museu\", \"when\": \"2024-09-12\"}"
                                        .formatted(number, price))
                        .status())
                .isEqualTo(201);
    }

    @Test
    void aConsignmentBeginsWithThePriceOfThePieceAndAMissingOneLeadsToItsAgreement() throws IOException {
        saved("/pieces", "number", "V24-003", "title", "Weir", "price", "240 EUR");
        assertThat(client.get("/acts/consign?pieces=V24-003,V24-001").text().replace('\u00a0', ' '))
                .containsOnlyOnce("value=\"240 EUR\"");
        assertThat(client.get("/acts/lend?pieces=V24-003").text()).doesNotContain("240");
        assertThat(client.get("/agreements/new?kind=consignment&pieces=V24-003")
                        .text()
                        .replace('\u00a0', ' '))
                .contains("value=\"240 EUR\"");
        saved("/acts/consign", "pieces.0.piece", "V24-003", "when", "2024-09-01", "party", "museu", "agreement", "yes");
        assertThat(client.get("/documents?kind=consignment-schedule&valued=1&pieces=V24-003&agreement=A24-001")
                        .text())
                .contains("No value is recorded for V24-003 in A24-001", "href=\"/agreements/A24-001/edit\"");
    }

    @Test
    void aLoanOfTwoPiecesWritesTheirEventsAndOneAgreement() throws IOException {
        String next = saved(
                "/acts/lend",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.price",
                "400 EUR",
                "pieces.1.piece",
                "v24/2",
                "when",
                "2024-09-01",
                "until",
                "2024-12-01",
                "party",
                "museu do sarelho",
                "agreement",
                "yes");
        Agreement agreement =
                wiring.archive().ledger().all(Kinds.AGREEMENT).get(0).record();
        assertThat(agreement.id()).hasToString("A24-001");
        assertThat(agreement.party()).hasToString("museu");
        assertThat(agreement.pieces()).hasSize(2);
        assertThat(agreement.pieces().get(0).value()).hasToString("400\u00a0EUR");
        assertThat(piece("V24-001").events()).singleElement().satisfies(event -> {
            assertThat(event.price()).isNull();
            assertThat(event.until().entered()).isEqualTo("2024-12-01");
        });
        assertThat(now("V24-002").status()).isEqualTo(Status.ON_LOAN);
        String schedule = "/documents?kind=loan-schedule&valued=1&pieces=V24-001%2CV24-002&agreement=A24-001";
        assertThat(client.get(next).text()).contains(schedule.replace("&", "&amp;"));
        assertThat(client.get(schedule).words()).contains("Museu do Sarelho");
    }

    @Test
    void whatCannotFollowIsRefusedForEachPieceAndNothingIsWritten() throws IOException {
        saved("/acts/give", "pieces.0.piece", "V24-001", "when", "2024-09-01", "party", "museu");
        Answer refused = client.post(
                "/acts/sell",
                "pieces.0.piece",
                "V24-001",
                "pieces.1.piece",
                "V24-002",
                "when",
                "2024-09-12",
                "note",
                "at the fair");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words())
                .contains("V24-001: It is recorded as given away (2024-09-01), so “sold” cannot follow.");
        assertThat(refused.text()).contains("at the fair");
        assertThat(piece("V24-002").events()).isEmpty();

        saved("/acts/sell", "pieces.0.piece", "V24-001", "when", "2024-09-12", "unsure", "yes");
        assertThat(now("V24-001").status()).isEqualTo(Status.SOLD);
        assertThat(client.get("/pieces/V24-001").words()).contains("(not certain)");
    }

    @Test
    void anEventTypedInTheEditFormIsCheckedInItsRowToo() throws IOException {
        Answer refused = client.post(
                "/pieces/V24-001/edit",
                "title",
                "Figueira",
                "version",
                "1",
                "events.0.kind",
                "sold",
                "events.0.when",
                "2024-05-01",
                "events.1.kind",
                "lent",
                "events.1.when",
                "2024-06-01");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.text()).contains("f-events-1-kind").contains("recorded as sold");
    }

    @Test
    void theSameByTheInterfaceForPrograms() throws IOException {
        Answer done = client.postJson(
                "/api/acts/consign",
                "{\"pieces\": [{\"piece\": \"V24-001\", \"price\": \"200 EUR\"}], \"when\": \"2024-09-01\","
                        + " \"newPerson\": \"Loja Azul\", \"commission\": \"40\", \"agreement\": true}");
        assertThat(done.status()).as(done.text()).isEqualTo(201);
        assertThat(done.json().get("party").textValue()).isEqualTo("loja-azul");
        assertThat(done.json().get("agreement").textValue()).isEqualTo("A24-001");
        assertThat(client.get("/agreements/A24-001").words()).contains("40\u00a0%");
        Answer again =
                client.postJson("/api/acts/lend", "{\"pieces\": [{\"piece\": \"V24-001\"}], \"when\": \"2024-09-02\"}");
        assertThat(again.status()).isEqualTo(400);
        assertThat(again.json().at("/problems/0/problem").textValue()).contains("recorded as consigned");
        assertThat(client.postJson("/api/acts/fly", "{}").status()).isEqualTo(404);
        ObjectMapper json = new ObjectMapper();
        var sent = json.createObjectNode().put("number", "V24-001").put("title", "Figueira");
        sent.putArray("events").addObject().put("kind", "returned");
        assertThat(client.send(
                                "PUT",
                                "/api/pieces/V24-001",
                                sent.toString().getBytes(StandardCharsets.UTF_8),
                                "Content-Type",
                                "application/json",
                                "If-Match",
                                "\"2\"")
                        .text())
                .contains("not recorded as lent");
    }

    @Test
    void aFieldThatTheActDoesNotAskIsRefusedByItsName() throws IOException {
        Answer refused = act(
                "sell",
                "{\"pieces\": [{\"piece\": \"V24-001\", \"price\": \"180 EUR\"}], \"until\": \"2024-12-01\","
                        + " \"commission\": \"40\", \"place\": null}");
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().get("problems").findValuesAsText("field")).containsExactly("until", "commission");
        assertThat(refused.json().at("/problems/0/problem").textValue())
                .isEqualTo(
                        "“Sell” does not ask this. It asks pieces, when, party, newPerson, place, note, unsure, taxWay,"
                                + " taxRate, pieces.piece, pieces.price, pieces.tax.");
        assertThat(act("move", "{\"pieces\": [{\"piece\": \"V24-001\", \"price\": \"1 EUR\"}], \"place\": \"box\"}")
                        .json()
                        .at("/problems/0/field")
                        .textValue())
                .isEqualTo("pieces.0.price");
        assertThat(piece("V24-001").events()).isEmpty();
    }

    @Test
    void aCommissionWithoutAnAgreementIsNotDroppedSilently() throws IOException {
        Answer refused = client.post(
                "/acts/consign",
                "pieces.0.piece",
                "V24-001",
                "party",
                "museu",
                "commission",
                "40",
                "when",
                "2024-09-01");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("The commission is kept in the agreement.");
        assertThat(refused.field("commission")).isEqualTo("40");
    }

    /** The clock of these tests stands at 30 September 2024. */
    @Test
    void whatHasHappenedCannotLieAhead() throws IOException {
        Answer refused = client.post(
                "/acts/sell",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.price",
                "180 EUR",
                "when",
                "2999-05-01",
                "unsure",
                "yes");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("“sold” is dated 2999-05-01, which lies ahead of today");
        assertThat(refused.field("when")).isEqualTo("2999-05-01");
        assertThat(act("sell", "{\"pieces\": [{\"piece\": \"V24-001\"}], \"when\": \"2024-10-02\"}")
                        .status())
                .isEqualTo(400);
        assertThat(act(
                                "lend",
                                "{\"pieces\": [{\"piece\": \"V24-002\"}], \"when\": \"2024-10-01\","
                                        + " \"until\": \"2999-05-01\"}")
                        .status())
                .as("a day of grace, and a due date may lie ahead")
                .isEqualTo(201);
        String[] typed = {
            "title",
            "Figueira",
            "version",
            "1",
            "events.0.kind",
            "sold",
            "events.0.when",
            "2999",
            "events.0.note",
            "the fair"
        };
        Answer form = client.post("/pieces/V24-001/edit", typed);
        assertThat(form.status()).isEqualTo(422);
        assertThat(form.text()).contains("f-events-0-when", "the fair", "lies ahead of today");
        assertThat(piece("V24-001").events()).isEmpty();
    }

    /** An examination, a payment and a dyeing have happened too; what is due may lie ahead. */
    @Test
    void noOtherThingThatHasHappenedLiesAheadEither() throws IOException {
        assertThat(client.postJson("/api/pieces/V24-001/examinations", "{\"when\": \"about 2027\"}")
                        .text())
                .contains("“examination” is dated about 2027, which lies ahead of today", "\"when\"");
        assertThat(client.postJson("/api/clampings", "{\"when\": \"2999\"}").text())
                .contains("lies ahead of today", "\"when\"");
        assertThat(client.postJson("/api/clampings", "{\"steps\": [{\"kind\": \"dips\", \"when\": \"2024-10-02\"}]}")
                        .text())
                .contains("lies ahead of today", "steps.0.when");
        String agreement = "{\"kind\": \"consignment\", \"until\": \"2999\", \"payments\": [{\"kind\": \"paid\","
                + " \"amount\": \"90 EUR\", \"when\": \"%s\"}]}";
        assertThat(client.postJson("/api/agreements", agreement.formatted("2999-01-01"))
                        .text())
                .contains("lies ahead of today", "payments.0.when");
        assertThat(client.postJson("/api/agreements", agreement.formatted("2024-10-01"))
                        .status())
                .as("a day of grace, and a due date may lie ahead")
                .isEqualTo(201);
        Answer form = client.post(
                "/clampings", "id", "C24-001", "when", "2999", "steps.2.kind", "dips", "steps.2.when", "2998");
        assertThat(form.status()).isEqualTo(422);
        assertThat(form.text()).contains("f-when", "f-steps-2-when");

        Clamping old = Kinds.CLAMPING
                .codec()
                .fromText(("{'id': 'C24-009', 'when': {'entered': '2999', 'from': '2999-01-01', 'to': '2999-12-31'}}")
                        .replace('\'', '"'));
        wiring.archive().ledger().write("test", ledger -> ledger.create(Kinds.CLAMPING, old));
        assertThat(client.post("/clampings/C24-009/edit", "version", "1", "when", "2999", "notes", "rain")
                        .status())
                .isEqualTo(303);
        assertThat(client.post("/clampings/C24-009/edit", "version", "2", "when", "2998")
                        .status())
                .isEqualTo(422);
    }

    @Test
    void whatWasRecordedAheadInFormerTimesStaysReadableAndCanBeSaved() throws IOException {
        Piece old = Kinds.PIECE
                .codec()
                .fromText(
                        "{'number': 'V24-003', 'events': [{'kind': 'sold', 'when': {'entered': '2999', 'from': '2999-01-01', 'to': '2999-12-31'}}]}"
                                .replace('\'', '"'));
        wiring.archive().ledger().write("test", ledger -> ledger.create(Kinds.PIECE, old));
        assertThat(client.get("/pieces/V24-003").words()).contains("2999");
        assertThat(client.post(
                                "/pieces/V24-003/edit",
                                "title",
                                "Weir",
                                "version",
                                "1",
                                "events.0.kind",
                                "sold",
                                "events.0.when",
                                "2999",
                                "events.0.note",
                                "at the fair")
                        .status())
                .isEqualTo(303);
        assertThat(piece("V24-003").events().get(0).note()).isEqualTo("at the fair");
        String right =
                "{\"piece\": \"V24-003\", \"was\": {\"kind\": \"sold\", \"when\": \"2999\", \"note\": \"at the fair\"},"
                        + " \"as\": {\"kind\": \"sold\", \"when\": \"%s\"}, \"reason\": \"misread\"}";
        assertThat(act("correct", right.formatted("2998")).text()).contains("lies ahead of today");
        assertThat(act("correct", right.formatted("2024")).status()).isEqualTo(200);
    }

    @Test
    void theActsThatArePossibleAreOffered() throws IOException {
        saved("/acts/lend", "pieces.0.piece", "V24-001", "when", "2024-09-01", "party", "museu");
        assertThat(client.get("/acts?pieces=V24-001").words())
                .contains("Return", "Sell")
                .doesNotContain("Consign")
                .doesNotContain("End the reservation");
        assertThat(client.get("/acts?pieces=V24-001,V24-002").words()).contains("possible for 1 of 2");
    }
}
