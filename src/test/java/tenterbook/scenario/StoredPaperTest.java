package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.app.Wiring;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentOrigin;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/** The PDF of issued paper: stored when it is issued, sent from there ever after, and made once for papers from before. */
class StoredPaperTest extends Scenario {
    @SuppressWarnings("rawtypes")
    private static final Kind<Map> RAW = new Kind<>(
                    Kinds.ISSUED_PAPER.name(),
                    Message.of("kind.issued-paper"),
                    new MappedCodec<>(new ObjectMapper(), Map.class),
                    paper -> (String) paper.get("id"),
                    paper -> List.of(Kinds.PIECE.key("V24-001")))
            .withPrivacy(Kinds.ISSUED_PAPER.privacy());

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Figueira", "category", "scarf", "made.0.clamping", "C24-001");
    }

    private IssuedPaper paper(String id) {
        return wiring.archive()
                .ledger()
                .find(Kinds.ISSUED_PAPER, id)
                .orElseThrow()
                .record();
    }

    private List<Revision> history(String id) {
        return wiring.archive().ledger().history(Kinds.ISSUED_PAPER.key(id));
    }

    private Path file(IssuedPaper paper) {
        String hex = paper.pdf().digest().hex();
        return wiring.archive().folder().papers().resolve(hex.substring(0, 2)).resolve(hex + ".pdf");
    }

    /** As a program before this one kept it. */
    private void keepOld(String id, String title, Map<String, String> setting) {
        Map<String, Object> piece = new TreeMap<>(Map.of("piece", "V24-001", "version", 1));
        piece.put("lines", List.of(Map.of("part", "title", "text", title)));
        Map<String, Object> paper = new TreeMap<>(Map.of("id", id, "kind", "hang-tag", "market", "us"));
        paper.putAll(Map.of("sheet", "single", "copies", 1, "issuedAt", "2024-03-05T10:15:00Z"));
        paper.putAll(Map.of("pieces", List.of(piece), "setting", setting));
        wiring.archive().ledger().write("someone", act -> act.create(RAW, paper));
    }

    private void reopen() {
        wiring.close();
        wiring = Wiring.serve(around.resolve("studio"), 0, CLOCK);
        client = new Client(wiring.port());
    }

    @Test
    void whatWasSentIsWhatIsStoredAndSentAgain() throws IOException {
        Answer tag = client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us");
        IssuedPaper issued =
                wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
        assertThat(issued.pdf().bytes()).isEqualTo(tag.body().length);
        assertThat(file(issued)).hasBinaryContent(tag.body());
        for (String copies : List.of("", "?copies=", "?copies=1")) {
            assertThat(client.get("/print/issued/" + issued.id() + ".pdf" + copies)
                            .body())
                    .isEqualTo(tag.body());
        }

        // Not laid out again, whatever the layout code may have become: without its file it is not sent at all.
        Files.delete(file(issued));
        Answer gone = client.get("/print/issued/" + issued.id() + ".pdf");
        assertThat(gone.status()).isGreaterThanOrEqualTo(400);
        assertThat(gone.words()).contains("is missing").contains("older bag");
        assertThat(history(issued.id())).hasSize(1);
    }

    @Test
    void aMissingOrDamagedFileIsNamedOnThePageOfThePaperAndWhereACodeIsCompared() throws IOException {
        client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us");
        IssuedPaper tag =
                wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
        assertThat(client.post("/documents/issue", "pieces", "V24-001", "kind", "provenance-certificate")
                        .status())
                .isEqualTo(200);
        IssuedPaper certificate =
                wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
        String code = DocumentOrigin.of(certificate).certificateCode();
        Map<IssuedPaper, List<String>> pages = Map.of(
                tag,
                List.of("/print/issued/" + tag.id()),
                certificate,
                List.of("/documents/issued/" + certificate.id(), "/verify?code=" + code.replace(" ", "")));
        for (var each : pages.entrySet()) {
            Path file = file(each.getKey());
            for (String page : each.getValue()) {
                assertThat(client.get(page).words()).doesNotContain("is missing", "has been changed");
            }
            Files.delete(file);
            for (String page : each.getValue()) {
                assertThat(client.get(page).words()).as(page).contains(file.getFileName() + " is missing");
            }
            Files.createDirectory(file);
            for (String page : each.getValue()) {
                Answer answer = client.get(page);
                assertThat(answer.status()).isEqualTo(200);
                assertThat(answer.words()).as(page).contains(file.getFileName() + " is missing");
            }
            String pdf = each.getKey() == tag
                    ? "/print/issued/" + tag.id() + ".pdf"
                    : "/documents/issued/" + certificate.id() + "/pdf";
            assertThat(client.get(pdf).words()).contains("is missing").doesNotContain("IOException");
        }
    }

    @Test
    void aPaperFromBeforeIsLaidOutOnceWhenItIsFetchedWithANoteThatSaysSo() throws IOException {
        keepOld("paper-20240305-101500-000", "Figueira as it was", Map.of("widthMm", "55.0", "heightMm", "90.0"));
        Answer first = client.get("/print/issued/paper-20240305-101500-000.pdf");
        assertThat(first.status()).as(first.words()).isEqualTo(200);
        assertThat(file(paper("paper-20240305-101500-000"))).hasBinaryContent(first.body());
        assertThat(client.get("/print/issued/paper-20240305-101500-000.pdf").body())
                .isEqualTo(first.body());
        assertThat(history("paper-20240305-101500-000"))
                .hasSize(2)
                .last()
                .satisfies(revision -> assertThat(revision.note()).contains("laid out afterwards"));
    }

    @Test
    void papersFromBeforeAreStoredWhenTheArchiveIsOpenedAndOneThatCannotBeHindersNothing() throws Exception {
        Map<String, String> size = Map.of("widthMm", "55.0", "heightMm", "90.0");
        keepOld("paper-1", "one", size);
        keepOld("paper-2", "קשר", size);
        keepOld("paper-3", "three", Map.of("widthMm", "9000", "heightMm", "90.0"));
        keepOld("paper-4", "four", size);
        reopen();
        long until = System.nanoTime() + 60_000_000_000L;
        while (paper("paper-4").pdf() == null && System.nanoTime() < until) {
            Thread.sleep(20);
        }
        assertThat(file(paper("paper-1"))).exists();
        assertThat(file(paper("paper-4"))).exists();
        assertThat(paper("paper-2").pdf()).isNull();
        assertThat(paper("paper-3").pdf()).isNull();
        assertThat(history("paper-1")).hasSize(2);
        long last = wiring.archive().ledger().lastSequence();
        reopen();
        over("/work/1");
        assertThat(wiring.archive().ledger().lastSequence()).isEqualTo(last);
        assertThat(client.get("/print/issued/paper-2").words()).contains("קשר");
    }

    @Test
    void aPaperOutOfWhichAPersonWasErasedAnswersThatItWasAndIsNotLaidOutAgain() throws Exception {
        saved("/people", "id", "almorena", "name", "Brites Almorena", "kind", "buyer", "contact", "Rua do Sal");
        Answer loan = client.post(
                "/documents/issue",
                "pieces",
                "V24-001",
                "kind",
                "loan-schedule",
                "party",
                "Brites Almorena",
                "from",
                "May",
                "until",
                "June");
        assertThat(loan.status()).as(loan.words()).isEqualTo(200);
        IssuedPaper document =
                wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
        keepOld("paper-1", "Shawl for Brites Almorena", Map.of("widthMm", "55.0", "heightMm", "90.0"));
        keepOld("paper-2", "Figueira", Map.of("widthMm", "55.0", "heightMm", "90.0"));
        wiring.archive().ledger().erase("Inês Valderim", Kinds.PARTY, "almorena", "asked for by the person");
        reopen();
        over("/work/1");

        for (String link : List.of(
                "/documents/issued/" + document.id() + "/pdf",
                "/print/issued/paper-1.pdf",
                "/print/issued/paper-1.pdf?copies=7")) {
            Answer answer = client.get(link);
            assertThat(answer.status()).as(link).isEqualTo(410);
            assertThat(answer.words()).contains("was erased on request");
        }
        for (String page : List.of("/documents/issued/" + document.id(), "/print/issued/paper-1")) {
            Answer answer = client.get(page);
            assertThat(answer.status()).as(page).isEqualTo(200);
            assertThat(answer.words())
                    .contains("was erased on request", "V24-001")
                    .doesNotContain("Almorena", "Reprint unchanged", "Print it again");
        }
        assertThat(file(document)).doesNotExist();
        assertThat(paper("paper-1").pdf()).isNull();
        assertThat(client.get("/print/issued/paper-2.pdf").status()).isEqualTo(200);
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED)).isEmpty();
    }
}
