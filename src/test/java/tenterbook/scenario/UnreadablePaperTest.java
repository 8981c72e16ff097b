package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Joined;

/** Issued paper that another program kept otherwise: it spoils nothing but itself, and its words stay to be read. */
class UnreadablePaperTest extends Scenario {
    @SuppressWarnings("rawtypes")
    private static final Kind<Map> RAW = new Kind<>(
            Kinds.ISSUED_PAPER.name(),
            Joined.with("", "paper"),
            new MappedCodec<>(new ObjectMapper(), Map.class),
            paper -> (String) paper.get("id"),
            paper -> List.of(Kinds.PIECE.key("V24-001")));

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Figueira", "category", "scarf", "made.0.clamping", "C24-001");
    }

    private Map<String, Object> paper(String id) {
        Map<String, Object> piece = new TreeMap<>(Map.of("piece", "V24-001", "version", 1));
        piece.put("lines", List.of(Map.of("part", "title", "text", "Figueira as it was")));
        return new TreeMap<>(Map.of(
                "id",
                id,
                "kind",
                "hang-tag",
                "market",
                "us",
                "sheet",
                "single",
                "issuedAt",
                "2024-09-30T16:19:00Z",
                "pieces",
                List.of(piece),
                "setting",
                Map.of("widthMm", "55.0")));
    }

    private void keep(Map<String, Object> paper) {
        wiring.archive().ledger().write("someone", act -> act.create(RAW, paper));
    }

    @ParameterizedTest
    @ValueSource(strings = {"kind", "issuedAt", "pieces"})
    void aPaperThatCannotBeReadHidesNeitherThePieceNorItsOtherPapers(String spoilt) throws IOException {
        keep(paper("paper-good"));
        Map<String, Object> bad = paper("paper-bad");
        bad.put(spoilt, List.of(List.of("of another form")));
        keep(bad);
        Map<String, Object> less = paper("paper-less");
        less.remove("issuedAt");
        keep(less);

        Answer piece = client.get("/pieces/V24-001");
        assertThat(piece.status()).as(piece.words()).isEqualTo(200);
        assertThat(piece.text()).contains("/print/issued/paper-good");
        assertThat(piece.words())
                .contains("The paper paper-bad is kept and cannot be read")
                .contains("The paper paper-less is kept and cannot be read");
        Answer good = client.get("/print/issued/paper-good");
        assertThat(good.status()).as(good.words()).isEqualTo(200);
        assertThat(good.words()).contains("Figueira as it was");
        for (String page :
                List.of("/print", "/print?pieces=V24-001", "/documents?pieces=V24-001", "/?tag=us:lacking")) {
            Answer answer = client.get(page);
            assertThat(answer.status()).as(page + " " + answer.words()).isEqualTo(200);
        }
        assertThat(client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us")
                        .header("Content-Type"))
                .isEqualTo("application/pdf");
        assertThat(client.get("/print/issued/paper-bad").words()).contains("still in the ledger");
    }

    @Test
    void aDocumentWhoseLinesAreNotUnderstoodShowsItsWordsAndSaysWhyItIsNotLaidOut() throws IOException {
        assertThat(client.post("/documents/issue", "pieces", "V24-001", "kind", "insurance-list")
                        .status())
                .isEqualTo(200);
        for (Map<String, String> odd : List.of(
                Map.of("part", "hologram", "text", "Seen from the left"),
                Map.of("part", "heading", "text", "Seen from the left"),
                Map.of("part", "colour", "text", "Seen from the left", "basis", "50 0"))) {
            var first = wiring.archive()
                    .ledger()
                    .latest(Kinds.ISSUED_PAPER, 1)
                    .get(0)
                    .record();
            Map<String, Object> paper = paper("paper-" + odd.get("part"));
            paper.put("kind", "insurance-list");
            paper.put("market", "");
            paper.put("settings", first.settings());
            List<Object> words = new ArrayList<>(List.of(Map.of("part", "part", "text", "")));
            if (odd.get("part").equals("colour")) {
                words.add(Map.of("part", "palette", "text", ""));
            }
            words.add(odd);
            paper.put("words", words);
            keep(paper);
            Answer page = client.get("/documents/issued/" + paper.get("id"));
            assertThat(page.status()).as(page.words()).isEqualTo(200);
            assertThat(page.words())
                    .contains("cannot be laid out again")
                    .contains("Seen from the left")
                    .contains("Figueira as it was")
                    .doesNotContain("Print it again");
            assertThat(client.get("/documents/issued/" + paper.get("id") + "/pdf")
                            .status())
                    .isEqualTo(400);
        }
    }

    @Test
    void aDocumentOnPaperThatThisProgramDoesNotKnowIsRefusedInWords() throws IOException {
        client.post("/documents/issue", "pieces", "V24-001", "kind", "insurance-list");
        var first =
                wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
        for (String page : List.of("", "a9")) {
            ObjectNode settings = first.settings().deepCopy();
            ((ObjectNode) settings.get("document")).put("page", page);
            Map<String, Object> paper = paper("paper-on-" + page + "-");
            paper.put("kind", "insurance-list");
            paper.put("settings", settings);
            paper.put("words", List.of(Map.of("part", "part", "text", "")));
            keep(paper);
            Answer pdf = client.get("/documents/issued/" + paper.get("id") + "/pdf");
            assertThat(pdf.status()).isEqualTo(400);
            assertThat(pdf.words()).contains("does not understand its settings", "\"" + page + "\"");
        }
    }
}
