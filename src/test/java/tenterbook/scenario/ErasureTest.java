package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;
import tenterbook.archive.Kinds;
import tenterbook.exchange.FormatOneBag;
import tenterbook.exchange.Restore;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;

/** A buyer asks to be forgotten, and the maker does it in the browser while the program runs. */
class ErasureTest extends Scenario {
    private static final String PERSON = "/people/almorena";

    @BeforeEach
    void aPieceThatABuyerHas() throws IOException {
        studio();
        clamping();
        saved("/people", "id", "almorena", "name", "Brites Almorena", "kind", "buyer", "contact", "Rua do Sal");
        saved(
                "/pieces",
                "number",
                "V24-001",
                "title",
                "Figueira",
                "category",
                "scarf",
                "made.0.clamping",
                "C24-001",
                "events.0.kind",
                "sold",
                "events.0.party",
                "almorena");
    }

    private boolean onTheDisk(String text) throws IOException {
        try (Stream<Path> files = Files.walk(around.resolve("studio"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                if (Files.readString(file, StandardCharsets.ISO_8859_1).contains(text)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void thePageSaysWhatGoesAndWhatStaysAndASlipErasesNothing() throws IOException {
        assertThat(client.get(PERSON).text()).contains(PERSON + "/erase");
        Answer page = client.get(PERSON + "/erase");
        assertThat(page.words()).contains("cannot be undone", "Archives packed earlier", "for the law to say");
        Answer slip = client.post(PERSON + "/erase", "confirm", "almorina", "reason", "a letter of 3 May");
        assertThat(slip.status()).isEqualTo(422);
        assertThat(slip.words()).contains("Type almorena here, as it stands. Nothing was erased.");
        assertThat(slip.text()).contains("value=\"almorina\"", "value=\"a letter of 3 May\"");
        assertThat(wiring.archive().ledger().find(Kinds.PARTY, "almorena")).isPresent();
    }

    @Test
    void aReasonThatNamesThePersonIsRefusedOnThePageWithAllThatWasTyped() throws IOException {
        for (String reason : List.of("Brites Almorena asked by letter", "record almorena, as asked")) {
            Answer answer = client.post(PERSON + "/erase", "confirm", "almorena", "reason", reason);
            assertThat(answer.status()).isEqualTo(422);
            assertThat(answer.words()).contains("must not name the person", "Nothing was erased");
            assertThat(answer.text()).contains("id=\"reason-problem\"").doesNotContain("id=\"confirm-problem\"");
            assertThat(answer.field("reason")).isEqualTo(reason);
            assertThat(answer.field("confirm")).isEqualTo("almorena");
        }
        assertThat(wiring.archive().ledger().find(Kinds.PARTY, "almorena")).isPresent();
    }

    @Test
    void theCodeOfARecordFromWhichAPersonWasErasedIsNotCalledDamaged(@TempDir Path empty) throws IOException {
        Path folder = empty.resolve("studio");
        new Restore(CLOCK).restore(FormatOneBag.at(empty.resolve("bag")), folder, Progress.UNWATCHED);
        try (Wiring sample = Wiring.serve(folder, 0, Clock.systemUTC())) {
            Ledger ledger = sample.archive().ledger();
            Client there = new Client(sample.port());
            List<Revision> pieces = ledger.after(0, 10_000).stream()
                    .filter(revision -> revision.key().kind().equals(Kinds.PIECE.name()))
                    .filter(revision -> revision.json().contains("sala-vermia"))
                    .toList();
            assertThat(pieces).isNotEmpty();
            String code = pieces.get(0).hash().hex().substring(0, 16);
            assertThat(there.get("/verify?code=" + code).words()).contains("The code fits:", "hashed again just now");
            ledger.erase("Inês Valderim", Kinds.PARTY, "sala-vermia", "asked for");
            assertThat(ledger.history(pieces.get(0).key())
                            .get(pieces.get(0).version() - 1)
                            .redacted())
                    .isTrue();
            assertThat(there.get("/verify?code=" + code).words())
                    .contains("The code fits:", "Particulars of a person were erased from it on request")
                    .doesNotContain("damaged", "something was changed");
        }
    }

    @Test
    void whoIsErasedIsInNoFileOfTheRunningArchive() throws Exception {
        assertThat(client.get("/?q=almorena").words()).contains("Figueira");
        String work = saved(PERSON + "/erase", "confirm", "almorena", "reason", "");
        assertThat(over(work))
                .contains("without any name", "the party’s record, in its one revision")
                .contains("Not erased: printed paper, and PDF files that were given out")
                .doesNotContain("almorena", "Almorena");
        assertThat(client.get(PERSON).status()).isEqualTo(404);
        assertThat(client.get("/pieces/V24-001").words()).contains("Figueira").doesNotContain("Almorena");
        assertThat(client.get("/?q=almorena").words()).doesNotContain("Figueira");
        close();
        for (String trace : List.of("almorena", "Almorena", "Rua do Sal")) {
            assertThat(onTheDisk(trace)).as(trace).isFalse();
        }
        serve();
        assertThat(wiring.archive().ledger().check().run(Progress.UNWATCHED)).isEmpty();
    }
}
