package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.piece.CareTest;
import tenterbook.piece.EventKind;
import tenterbook.recipe.StepKind;

/** What a person chose or typed is saved, or comes back after a reload. */
class KeptTypingTest extends Scenario {
    @Test
    void aStepOfWhichOnlyItsWorkWasChosenIsKept() throws IOException {
        saved("/clampings", "id", "C24-001", "title", "figs", "steps.0.kind", "dips", "steps.1.kind", "washing");
        assertThat(wiring.archive().clamping("C24-001").orElseThrow().steps())
                .extracting(step -> step.kind())
                .containsExactly(StepKind.DIPS, StepKind.WASHING);
        assertThat(client.get("/clampings/C24-001/edit").field("steps.1.kind")).isEqualTo("washing");
    }

    @Test
    void anEventAndATestOfWhichOnlyTheKindWasChosenAreKept() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        saved(
                "/pieces/V24-001/edit",
                "version",
                "1",
                "title",
                "Maré",
                "events.0.kind",
                "sold",
                "tests.0.kind",
                "hand wash");
        var piece = wiring.archive().piece("V24-001").orElseThrow();
        assertThat(piece.events()).extracting(event -> event.kind()).containsExactly(EventKind.SOLD);
        assertThat(piece.tests()).extracting(test -> test.kind()).containsExactly(CareTest.Kind.HAND_WASH);
    }

    /** The first option of a select is chosen where no other is, so it must stand for nothing. */
    @ParameterizedTest
    @CsvSource({"/clampings/C24-001/edit,steps", "/pieces/V24-001/edit,events", "/pieces/V24-001/edit,tests"})
    void aRowJustAddedHasNothingChosenAndIsNotSavedUntouched(String form, String part) throws IOException {
        saved("/clampings", "id", "C24-001", "title", "figs");
        saved("/pieces", "number", "V24-001", "title", "Maré");
        Answer added = client.post(form, "version", "1", "title", "Maré", "order", "add " + part);
        Matcher select = Pattern.compile(
                        "(?s)<select[^>]*name=\"" + part + "\\.0\\.kind\"[^>]*>\\s*(<option.*?</option>)")
                .matcher(added.text());
        assertThat(select.find()).isTrue();
        assertThat(select.group(1)).isEqualTo("<option value=\"\">choose…</option>");
        assertThat(added.field(part + ".0.kind")).isEmpty();

        saved(form, "version", "1", "title", "Maré again", part + ".0.kind", "", part + ".0.when", "");
        assertThat(client.get(form).text()).doesNotContain("name=\"" + part + ".0.kind\"");
    }

    @Test
    void aReloadAfterARefusedSaveShowsWhatWasTyped() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        Answer refused = client.post(
                "/pieces/V24-001/edit", "version", "1", "title", "Maré alta", "length", "1,200", "notes", "by the sea");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("Cancel: what you typed is kept and offered again");
        Answer again = client.get("/pieces/V24-001/edit");
        assertThat(again.field("title")).isEqualTo("Maré alta");
        assertThat(again.field("length")).isEqualTo("1,200");
        assertThat(again.field("notes")).isEqualTo("by the sea");
        assertThat(again.field("version")).isEqualTo("1");
        assertThat(client.get("/").words()).contains("piece V24-001");

        saved("/pieces/V24-001/edit", "version", "1", "title", "Maré alta", "length", "120 cm");
        assertThat(wiring.archive().ledger().drafts().all()).isEmpty();
    }

    @Test
    void aReloadAfterARefusedNewRecordShowsWhatWasTyped() throws IOException {
        assertThat(client.post("/boards", "id", "no such name!", "image", "Fig and wasp")
                        .status())
                .isEqualTo(422);
        assertThat(client.get("/boards/new").field("image")).isEqualTo("Fig and wasp");

        saved("/pieces", "number", "V24-001", "title", "Maré");
        assertThat(client.post("/pieces", "number", "V24-001", "title", "Outra").status())
                .as("the number is taken")
                .isEqualTo(409);
        assertThat(client.get("/pieces/new").field("title")).isEqualTo("Outra");
    }

    @ParameterizedTest
    @CsvSource({"/cloths,id,LV,name", "/people,id,ondrel,name", "/boards,id,B07,image", "/pieces,number,V24-001,title"})
    void typingIntoARecordThatWasWithdrawnMeanwhileIsShownAgainAndKept(String base, String key, String id, String field)
            throws IOException {
        saved(base, key, id, field, "as it was");
        saved(base + "/" + id + "/withdraw", "why", "");

        Answer answer = client.post(base + "/" + id + "/edit", "version", "1", field, "typed", "notes", "a long story");
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.field("notes")).isEqualTo("a long story");
        assertThat(answer.words()).contains("was withdrawn in the meantime").contains("another name");
        assertThat(answer.text()).contains("href=\"/history/");
        Answer again = client.get(base + "/" + id + "/edit");
        assertThat(again.status()).isEqualTo(409);
        assertThat(again.field("notes")).isEqualTo("a long story");

        assertThat(client.get(base + "/never/edit").status()).isEqualTo(404);
        assertThat(client.post(base + "/never/edit", "version", "1", field, "typed")
                        .status())
                .isEqualTo(404);
    }

    @Test
    void typingIntoAWithdrawnRecordIsSavedAfterItIsBroughtBackOrAsANewOne() throws IOException {
        saved("/cloths", "id", "LV", "name", "linen");
        saved("/cloths/LV/withdraw", "why", "");
        client.post("/cloths/LV/edit", "version", "1", "name", "linen, washed", "notes", "a long story");
        saved("/history/cloth/LV/bring-back", "version", "1");
        Answer form = client.get("/cloths/LV/edit");
        assertThat(form.status()).isEqualTo(200);
        assertThat(form.field("notes")).isEqualTo("a long story");

        saved("/cloths/LV/withdraw", "why", "");
        Answer gone = client.get("/cloths/LV/edit");
        Matcher asNew =
                Pattern.compile("(?s)<form[^>]*action=\"/cloths\".*?</form>").matcher(gone.text());
        assertThat(asNew.find()).isTrue();
        assertThat(asNew.group()).contains("name=\"notes\"").contains("a long story");
    }

    @Test
    void typingIntoAnExaminationThatWasWithdrawnMeanwhileIsShownAgain() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        String page = saved("/pieces/V24-001/condition", "when", "2024-03-14");
        String id = page.substring(page.lastIndexOf('/') + 1);
        saved("/examinations/" + id + "/withdraw", "why", "");
        Answer answer = client.post(
                "/examinations/" + id + "/edit", "version", "1", "when", "2024-03-14", "notes", "a long story");
        assertThat(answer.status()).as(answer.words()).isEqualTo(409);
        assertThat(answer.words()).contains("was withdrawn in the meantime");
        assertThat(answer.text()).contains("a long story");
    }
}
