package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Revision;
import tenterbook.material.FibreShare;
import tenterbook.measure.Digest;

/** Recording and changing pieces: what was typed is saved or comes back, and nothing is lost between two people. */
class RecordingTest extends Scenario {
    private List<Revision> history(String number) {
        return wiring.archive().ledger().history(Kinds.PIECE.key(number));
    }

    @Test
    void aBoltTypedWithoutItsButtonIsMadeWithTheClampingAndAForgottenTemperatureIsSaidSo() throws IOException {
        String order = client.get("/clampings/new").field("make.cuts-0.order");
        String[] typed = {
            "id",
            "C24-001",
            "cuts.0.length",
            "90 cm",
            "cuts.0.width",
            "60 cm",
            "make.cuts-0.name",
            "Plain weave",
            "make.cuts-0.fibre",
            "linen",
            "make.cuts-0.percent",
            "all",
            "make.cuts-0.order",
            order,
            "steps.0.kind",
            "bath",
            "steps.0.temperature",
            "forgot"
        };
        Answer unclear = client.post("/clampings", typed);
        assertThat(unclear.status()).isEqualTo(422);
        assertThat(unclear.text()).contains("f-make-cuts-0-percent-problem");
        assertThat(wiring.archive().ledger().count(Kinds.CLOTH)).isZero();
        typed[List.of(typed).indexOf("all")] = "100";
        saved("/clampings", typed);
        assertThat(wiring.archive().ledger().all(Kinds.CLOTH)).singleElement().satisfies(saved -> {
            assertThat(saved.record().name()).isEqualTo("Plain weave");
            assertThat(saved.record().content()).containsExactly(new FibreShare("linen", 100.0, ""));
            assertThat(wiring.archive().clamping("C24-001").orElseThrow().cuts())
                    .singleElement()
                    .satisfies(cut ->
                            assertThat(cut.cloth()).isEqualTo(saved.record().id()));
        });
        assertThat(client.get("/clampings/C24-001").words()).contains("Temperature not remembered.");
    }

    /** Each photograph has four fields here; a form has had more than a thousand since. */
    @Test
    void aPieceWith260PhotographsIsSavedAndMoreFieldsThanTheBoundAreRefusedWithASentence() throws IOException {
        String digest = client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(1))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        List<String> typed = new ArrayList<>(List.of("number", "V24-260", "title", "Every fold"));
        for (int i = 0; i < 260; i++) {
            String row = "photos." + i + ".";
            typed.addAll(List.of(
                    row + "photo", digest, row + "role", "detail", row + "state", "1", row + "caption", "fold " + i));
        }
        Answer answer = client.postFiles("/pieces", List.of(), typed.toArray(String[]::new));
        assertThat(answer.status()).as(answer.words()).isEqualTo(303);
        assertThat(wiring.archive().piece("V24-260").orElseThrow().photos()).hasSize(260);

        for (int i = 0; i < 20_000; i++) {
            typed.addAll(List.of("more." + i, ""));
        }
        String[] many = typed.toArray(String[]::new);
        for (Answer refused : List.of(client.postFiles("/pieces", List.of(), many), client.post("/pieces", many))) {
            assertThat(refused.status()).isEqualTo(413);
            assertThat(refused.words().replace(",", "")).contains("at most 20000 fields", "Nothing was changed");
        }
    }

    @Test
    void aTypedPieceIsSavedAndShown() throws IOException {
        studio();
        assertThat(client.get("/pieces/new").field("number")).isEqualTo("V24-001");
        String page =
                saved("/pieces", "number", "V24-001", "title", "Maré", "length", "1 1/2 yd", "width", "about 60 in");
        assertThat(page).isEqualTo("/pieces/V24-001");
        assertThat(client.get(page).words())
                .contains("Maré")
                .contains("1 1/2 yd")
                .contains("137");
        assertThat(client.get("/").words()).contains("V24-001");
        assertThat(client.get("/pieces/new").field("number")).isEqualTo("V24-002");
    }

    @ParameterizedTest
    @ValueSource(strings = {"É24-001", "版24-001", "ß-1", "١-١", "\uD835\uDD38-1"})
    void aRecordNamedInAnyScriptIsShownAfterItIsSaved(String name) throws IOException {
        String piece = saved("/pieces", "number", name, "title", "Maré");
        assertThat(client.get(piece).words()).contains(name + " Maré");
        String changed = saved(piece + "/edit", "version", "1", "title", "Maré alta");
        assertThat(client.get(changed).words()).contains("Maré alta");
        String history = saved(piece + "/withdraw");
        assertThat(client.get(history).words()).contains("Saved versions of piece " + name);
        assertThat(client.get(saved("/history/piece/" + encoded(name) + "/bring-back", "version", "1"))
                        .words())
                .contains("Maré");
        assertThat(client.get(saved("/boards", "id", name, "image", "Fig")).status())
                .isEqualTo(200);
        assertThat(client.get(saved("/people", "id", name, "name", "Sala")).status())
                .isEqualTo(200);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @Test
    void aFormWithAPhotographWorksWithoutScripts() throws IOException {
        byte[] jpeg = Pictures.jpeg(3);
        Answer answer = client.postFiles(
                "/pieces",
                List.of(new Client.Part("files", "figs.jpg", jpeg), new Client.Part("files", "", new byte[0])),
                "number",
                "V24-001",
                "title",
                "Figueira");
        assertThat(answer.status()).as(answer.words()).isEqualTo(303);
        var piece = wiring.archive().piece("V24-001").orElseThrow();
        assertThat(piece.photos())
                .singleElement()
                .satisfies(photo -> assertThat(photo.photo()).isEqualTo(Digest.of(jpeg)));
        assertThat(client.get("/pieces/V24-001").text())
                .contains("/photos/" + Digest.of(jpeg).hex());
    }

    @Test
    void oneBadFileInAFormKeepsTheGoodOnesAndEverythingTyped() throws IOException {
        byte[] jpeg = Pictures.jpeg(4);
        Answer answer = client.postFiles(
                "/pieces",
                List.of(
                        new Client.Part("files", "notes.jpg", "no picture".getBytes(StandardCharsets.US_ASCII)),
                        new Client.Part("files", "figs.jpg", jpeg)),
                "number",
                "V24-001",
                "title",
                "Figueira",
                "length",
                "180 cm");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.field("title")).isEqualTo("Figueira");
        assertThat(answer.field("length")).isEqualTo("180 cm");
        assertThat(answer.field("photos.0.photo")).isEqualTo(Digest.of(jpeg).hex());
        assertThat(answer.words()).contains("whole JPEG");
        assertThat(wiring.archive().piece("V24-001")).isEmpty();
    }

    @Test
    void aQuantityThatIsNotUnderstoodKeepsEveryTypedValue() throws IOException {
        Answer answer = client.post(
                "/pieces",
                "number",
                "V24-001",
                "title",
                "Maré ‘baixa’",
                "length",
                "5 parsecs",
                "width",
                "45 cm",
                "photosShown",
                "1");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.field("number")).isEqualTo("V24-001");
        assertThat(answer.field("title")).isEqualTo("Maré ‘baixa’");
        assertThat(answer.field("length")).isEqualTo("5 parsecs");
        assertThat(answer.field("width")).isEqualTo("45 cm");
        assertThat(answer.words()).contains("“5 parsecs”").contains("Everything you typed is still here");
        assertThat(wiring.archive().ledger().lastSequence()).isZero();
    }

    @Test
    void everyProblemOfAFormIsToldAtOnce() throws IOException {
        saved("/pieces", "number", "V24-001");
        Answer answer = client.post(
                "/pieces/V24-001/edit",
                "version",
                "1",
                "length",
                "5 parsecs",
                "finished",
                "the day after never",
                "price",
                "many",
                "mass",
                "heavy-ish",
                "events.0.kind",
                "sold",
                "events.0.when",
                "soon enough",
                "notes",
                "kept");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words())
                .contains("“5 parsecs”")
                .contains("the day after never")
                .contains("“many”")
                .contains("heavy-ish")
                .contains("soon enough");
        assertThat(answer.field("events.0.when")).isEqualTo("soon enough");
        assertThat(answer.field("notes")).isEqualTo("kept");
        assertThat(answer.field("version")).isEqualTo("1");
        assertThat(history("V24-001")).hasSize(1);
    }

    @Test
    void aNumberIsNeverGivenTwiceAndTheSecondFormKeepsEverything() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        Answer answer = client.post("/pieces", "number", "V24-001", "title", "Figueira", "length", "90 cm");
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.field("title")).isEqualTo("Figueira");
        assertThat(answer.field("length")).isEqualTo("90 cm");
        assertThat(answer.words()).contains("never given twice");
        assertThat(wiring.archive().piece("V24-001").orElseThrow().title()).isEqualTo("Maré");

        saved("/pieces/V24-001/withdraw", "why", "typed by mistake");
        assertThat(client.post("/pieces", "number", "V24-001").status())
                .as("nor after a withdrawal")
                .isEqualTo(409);
    }

    @Test
    void ofTwoFormsOpenedAtOnceTheSecondIsShownBothAndNothingIsLost() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré", "length", "180 cm");
        String version = client.get("/pieces/V24-001/edit").field("version");
        saved("/pieces/V24-001/edit", "version", version, "title", "Maré alta", "length", "180 cm");

        Answer second = client.post(
                "/pieces/V24-001/edit",
                "version",
                version,
                "title",
                "Maré baixa",
                "length",
                "180 cm",
                "place",
                "studio");
        assertThat(second.status()).isEqualTo(409);
        assertThat(second.field("title")).isEqualTo("Maré baixa");
        assertThat(second.words())
                .contains("Maré alta")
                .contains("In your form")
                .contains("version 2");
        String table = second.text().substring(second.text().indexOf("<table class=\"differences stacked\">"));
        assertThat(table.substring(0, table.indexOf("</table>")))
                .contains("title")
                .contains("place")
                .as("what does not differ is not listed")
                .doesNotContain("number")
                .doesNotContain("length");
        assertThat(client.get("/pieces/V24-001/edit").field("title"))
                .as("a reload after the conflict keeps the typing")
                .isEqualTo("Maré baixa");

        saved(
                "/pieces/V24-001/edit",
                "version",
                second.field("version"),
                "title",
                second.field("title"),
                "length",
                "180 cm",
                "place",
                "studio");
        assertThat(history("V24-001")).hasSize(3);
        assertThat(client.get("/history/piece/V24-001").words())
                .contains("Maré alta")
                .contains("Maré baixa")
                .contains("Version 3");
        assertThat(wiring.archive().ledger().drafts().all()).isEmpty();
    }

    @Test
    void twoFormsOfTheStudioDoNotOverwriteEachOtherEither() throws IOException {
        studio();
        saved("/studio", "name", "Oficina Valderim", "maker", "Inês Valderim", "version", "1");
        Answer stale = client.post("/studio", "name", "Oficina", "maker", "Tomé Quarral", "version", "1");
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.field("maker")).isEqualTo("Tomé Quarral");
        assertThat(stale.words()).contains("Inês Valderim");
        Answer unread = client.post("/studio", "name", "Oficina", "currency", "guilders", "version", "1");
        assertThat(unread.status()).isEqualTo(422);
        assertThat(unread.field("version"))
                .as("a form that was not understood still knows where it began")
                .isEqualTo("1");
        saved("/studio", "name", "Oficina", "maker", "Tomé Quarral", "version", stale.field("version"));
        assertThat(wiring.archive().ledger().history(Kinds.STUDIO.key(Kinds.THE_STUDIO)))
                .hasSize(3);
    }

    @Test
    void savingWithoutAChangeWritesNothing() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        saved("/pieces/V24-001/edit", "version", "1", "title", "Maré");
        assertThat(history("V24-001")).hasSize(1);
    }

    @Test
    void typingIsKeptUntilItIsSavedOrPutAside() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        assertThat(client.post("/drafts/piece/V24-001", "title", "half a tit", "version", "1")
                        .status())
                .isEqualTo(204);
        assertThat(client.post("/drafts/piece", "title", "another piece", "number", "V24-002")
                        .status())
                .isEqualTo(204);
        assertThat(client.get("/").text()).contains("/pieces/V24-001/edit").contains("/pieces/new");

        Answer form = client.get("/pieces/V24-001/edit");
        assertThat(form.field("title")).isEqualTo("half a tit");
        assertThat(form.words()).contains("typed and not saved");
        assertThat(client.get("/pieces/new").field("title")).isEqualTo("another piece");

        saved("/discard-draft", "draft", "piece/V24-001");
        assertThat(client.get("/pieces/V24-001/edit").field("title")).isEqualTo("Maré");

        saved("/pieces", "title", "another piece", "number", "V24-002");
        assertThat(wiring.archive().ledger().drafts().all())
                .as("saving ends the draft; what was put aside stays")
                .extracting(draft -> draft.name())
                .containsExactly("aside/piece/V24-001");
        assertThat(client.post("/drafts/nothing/x", "title", "x").status()).isEqualTo(404);
    }

    @Test
    void aDraftOfAWithdrawnRecordWaitsUntilItIsBroughtBack() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        client.post("/drafts/piece/V24-001", "version", "1", "title", "Maré alta");
        assertThat(client.get("/").words()).contains("Typed and not saved: piece V24-001");
        saved("/pieces/V24-001/withdraw");
        assertThat(client.get("/").words()).doesNotContain("Typed and not saved");
        saved("/history/piece/V24-001/bring-back", "version", "1");
        assertThat(client.get("/").words()).contains("Typed and not saved: piece V24-001");
        assertThat(client.get("/pieces/V24-001/edit").field("title")).isEqualTo("Maré alta");
    }

    @Test
    void aDraftWithAVersionThatIsNoNumberStillOpens() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        client.post("/drafts/piece/V24-001", "version", "99999999999", "title", "Maré alta");
        assertThat(client.get("/pieces/V24-001/edit").field("title")).isEqualTo("Maré alta");
        Answer save = client.post("/pieces/V24-001/edit", "version", "99999999999", "title", "Maré alta");
        assertThat(save.status()).isEqualTo(409);
        assertThat(save.field("title")).isEqualTo("Maré alta");
    }

    @Test
    void noRecordIsCalledAsTheEmptyFormIs() throws IOException {
        for (String path : List.of("/pieces", "/boards", "/cloths", "/lots", "/people", "/clampings")) {
            Answer answer = client.post(path, "number", "new", "id", "new", "name", "x", "image", "x", "role", "dye");
            assertThat(answer.status()).as(path).isEqualTo(422);
            assertThat(answer.words()).as(path).contains("Choose another name");
        }
        assertThat(client.postJson("/api/pieces", "{\"number\": \"new\"}").status())
                .isEqualTo(400);
        assertThat(wiring.archive().ledger().lastSequence()).isZero();
    }

    @Test
    void aFaultOfAnyWordsLeadsToThePiecesThatHaveIt() throws IOException {
        saved("/pieces", "number", "V24-001", "faults.0.kind", "bleed & halo #2, 50% +");
        String page = client.get("/pieces/V24-001").text();
        String link =
                page.replaceAll("(?s).*href=\"(/\\?fault=[^\"]*)\".*", "$1").replace("&amp;", "&");
        assertThat(client.get(link).words()).contains("V24-001");
    }

    @Test
    void aDraftOfAnOlderVersionMeetsTheNewerOneInsteadOfOverwritingIt() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        client.post("/drafts/piece/V24-001", "title", "typed on the other screen", "version", "1");
        saved("/pieces", "number", "V24-009");
        assertThat(client.post("/pieces/V24-001/edit", "version", "1", "title", "Maré alta")
                        .status())
                .isEqualTo(303);
        client.post("/drafts/piece/V24-001", "title", "typed on the other screen", "version", "1");
        Answer form = client.get("/pieces/V24-001/edit");
        assertThat(form.field("version")).isEqualTo("1");
        assertThat(client.post("/pieces/V24-001/edit", "version", form.field("version"), "title", form.field("title"))
                        .status())
                .isEqualTo(409);
    }

    @Test
    void aPieceThatIsNamedCannotBeWithdrawnAndOneThatIsNotCanAndComesBack() throws IOException {
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Maré", "made.0.clamping", "C24-001");
        saved("/clampings/C24-001/withdraw", "why", "tidying");
        assertThat(wiring.archive().clamping("C24-001")).isPresent();
        Answer page = client.get("/clampings/C24-001");
        assertThat(page.status()).isEqualTo(200);

        saved("/pieces/V24-001/withdraw", "why", "typed twice");
        assertThat(client.get("/pieces/V24-001").status()).isEqualTo(404);
        assertThat(client.get("/history/piece/V24-001").words())
                .contains("withdrawn")
                .contains("typed twice");
        assertThat(client.post("/history/piece/V24-001/bring-back", "version", "1")
                        .location())
                .isEqualTo("/pieces/V24-001");
        assertThat(client.get("/pieces/V24-001").words()).contains("Maré");
        assertThat(history("V24-001")).hasSize(3);
    }

    @Test
    void aRefusedWithdrawalSaysWhoNamesTheRecord() throws IOException {
        clamping();
        Answer answer = client.post("/boards/B01/withdraw", "why", "tidying");
        assertThat(answer.status()).isEqualTo(303);
        Answer page = client.get(
                answer.location(), "Cookie", answer.header("Set-Cookie").replaceFirst(";.*", ""));
        assertThat(page.words()).contains("C24-001").contains("othing was changed");
    }

    @Test
    void anOlderVersionComesBackAsANewOne() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        saved("/pieces/V24-001/edit", "version", "1", "title", "Maré alta");
        saved("/history/piece/V24-001/bring-back", "version", "1");
        assertThat(wiring.archive().piece("V24-001").orElseThrow().title()).isEqualTo("Maré");
        assertThat(history("V24-001")).hasSize(3);
        for (String version : List.of("", "0", "99", "x", "-1", "99999999999")) {
            Answer answer = client.post("/history/piece/V24-001/bring-back", "version", version);
            assertThat(answer.status()).as(version).isEqualTo(404);
        }
    }

    @Test
    void aNameThatIsNotInTheArchiveIsAskedForAndNothingIsSaved() throws IOException {
        Answer answer = client.post("/pieces", "number", "V24-001", "title", "Maré", "made.0.clamping", "C99-001");
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.words()).contains("C99-001");
        assertThat(answer.field("title")).isEqualTo("Maré");
        assertThat(wiring.archive().piece("V24-001")).isEmpty();
    }

    @Test
    void whereTheLedgerCannotBeWrittenTheFormComesBackWithAllThatWasTyped() throws Exception {
        String ledger = "jdbc:sqlite:" + wiring.archive().folder().ledger();
        try (Connection other = DriverManager.getConnection(ledger);
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            Answer answer = client.post("/pieces", "number", "V24-001", "title", "Maré alta");
            assertThat(answer.status()).isEqualTo(500);
            assertThat(answer.field("title")).isEqualTo("Maré alta");
            assertThat(answer.words())
                    .contains("Nothing was saved: another program holds the ledger")
                    .doesNotContain("Exception");
            statement.execute("ROLLBACK");
        }
        assertThat(client.post("/pieces", "number", "V24-001", "title", "Maré alta")
                        .status())
                .isEqualTo(303);
    }

    @Test
    void aFormOfManyMegabytesIsRefusedWithASentenceAndTheServerGoesOn() throws IOException {
        Answer answer = client.post("/pieces", "number", "V24-001", "notes", "x".repeat(5 << 20));
        assertThat(answer.status()).isEqualTo(413);
        assertThat(answer.words()).contains("too large").contains("Nothing was changed");
        saved("/pieces", "number", "V24-001", "notes", "x".repeat(1 << 20));
    }
}
