package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;

/** Clampings: rows of the form, copying the last one, and dyeing a piece again. */
class DyeingTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
    }

    @Test
    void rowsAreAddedDroppedAndMovedWithoutLosingWhatIsTyped() throws IOException {
        Answer added = client.post(
                "/clampings",
                "id",
                "C24-002",
                "title",
                "typed",
                "steps.0.kind",
                "mordanting",
                "steps.0.temperature",
                "80 °C",
                "steps.1.kind",
                "dips",
                "steps.1.dips.count",
                "6 to 8",
                "order",
                "add steps");
        assertThat(added.status()).isEqualTo(200);
        assertThat(added.field("title")).isEqualTo("typed");
        assertThat(added.field("steps.1.dips.count")).isEqualTo("6 to 8");
        assertThat(added.text()).contains("name=\"steps.2.kind\"");

        Answer moved = client.post(
                "/clampings",
                "id",
                "C24-002",
                "steps.0.kind",
                "mordanting",
                "steps.0.temperature",
                "80 °C",
                "steps.1.kind",
                "dips",
                "steps.1.dips.count",
                "6 to 8",
                "order",
                "up steps.1");
        assertThat(moved.field("steps.0.kind")).isEqualTo("dips");
        assertThat(moved.field("steps.0.dips.count")).isEqualTo("6 to 8");
        assertThat(moved.field("steps.1.kind")).isEqualTo("mordanting");
        assertThat(moved.field("steps.1.temperature")).isEqualTo("80 °C");

        Answer dropped = client.post(
                "/clampings",
                "id",
                "C24-002",
                "steps.0.kind",
                "mordanting",
                "steps.1.kind",
                "dips",
                "steps.1.dips.count",
                "6 to 8",
                "order",
                "drop steps.0");
        assertThat(dropped.text()).doesNotContain("value=\"mordanting\" selected");
        assertThat(dropped.words()).contains("1. dips 6 to 8 dips");
        assertThat(dropped.field("steps.1.dips.count")).isEqualTo("6 to 8");
        assertThat(wiring.archive().clamping("C24-002")).isEmpty();
        assertThat(client.get("/clampings/new").field("steps.1.dips.count"))
                .as("a reload after rearranging keeps the typing")
                .isEqualTo("6 to 8");
    }

    /** An accordion in four along the length: each layer is reversed along it, and none across. */
    @Test
    void theMapOfLayersShowsBothMirrors() throws IOException {
        saved(
                "/clampings",
                "id",
                "C24-009",
                "fold.folds.0.style",
                "accordion",
                "fold.folds.0.panels",
                "4",
                "fold.folds.0.axis",
                "length");
        String map = client.get("/clampings/C24-009").text();
        assertThat(map.split(Pattern.quote("scale(1 -1)"), -1)).hasSize(3);
        assertThat(map.split(Pattern.quote("scale(1 1)"), -1)).hasSize(3);
        assertThat(map).doesNotContain("scale(-1");
    }

    @Test
    void anOrderThatMakesNoSenseChangesNothing() throws IOException {
        for (String order : new String[] {"up steps", "up", "up steps.x", "drop", "dance steps.0", "up steps.99"}) {
            Answer answer = client.post(
                    "/clampings", "id", "C24-002", "title", "typed", "steps.0.kind", "dips", "order", order);
            assertThat(answer.status()).as(order).isEqualTo(200);
            assertThat(answer.field("title")).isEqualTo("typed");
        }
    }

    @Test
    void aCopyOfTheLastClampingMarksWhatDiffers() throws IOException {
        Answer form = client.get("/clampings/new?from=C24-001");
        assertThat(form.field("id")).isEqualTo("C24-002");
        assertThat(form.field("copiedFrom")).isEqualTo("C24-001");
        assertThat(form.field("steps.0.dips.count")).isEqualTo("4");
        saved(
                "/clampings",
                "id",
                "C24-002",
                "copiedFrom",
                "C24-001",
                "title",
                "figs, four dips",
                "boards.0.use",
                "B01/I",
                "cuts.0.cloth",
                "SH",
                "cuts.0.length",
                "180 cm",
                "cuts.0.width",
                "90 cm",
                "steps.0.kind",
                "dips",
                "steps.0.dips.count",
                "9",
                "steps.0.charges.0.lot",
                "woad-1",
                "steps.0.temperature",
                "38 °C");
        String page = client.get("/clampings/C24-002").text();
        String differs = page.substring(page.indexOf("Differences from"), page.indexOf("</section>"));
        assertThat(differs).contains("step 1, dips").contains("<mark>9</mark>");
        assertThat(differs.split("<mark>")).as("one thing differs").hasSize(2);
    }

    @Test
    void aPieceLikeTheLastOneGetsItsOwnCopyOfTheRecipe() throws IOException {
        saved("/pieces", "number", "V24-001", "dyeing", "copy C24-001");
        assertThat(wiring.archive()
                        .piece("V24-001")
                        .orElseThrow()
                        .made()
                        .get(0)
                        .clamping()
                        .value())
                .isEqualTo("C24-002");
        assertThat(wiring.archive()
                        .clamping("C24-002")
                        .orElseThrow()
                        .copiedFrom()
                        .value())
                .isEqualTo("C24-001");
        saved("/pieces", "number", "V24-002", "dyeing", "same C24-002");
        assertThat(client.get("/clampings/C24-002").words())
                .containsSubsequence("Pieces from it", "V24-001", "V24-002", "Differences");
    }

    @Test
    void aPieceThatIsRefusedLeavesNoCopiedClampingBehind() throws IOException {
        saved("/pieces", "number", "V24-001");
        long before = wiring.archive().ledger().lastSequence();
        assertThat(client.post("/pieces", "number", "V24-001", "dyeing", "copy C24-001")
                        .status())
                .isEqualTo(409);
        assertThat(client.post("/pieces", "number", "V24-002", "length", "5 parsecs", "dyeing", "copy C24-001")
                        .status())
                .isEqualTo(422);
        assertThat(wiring.archive().ledger().lastSequence()).isEqualTo(before);
    }

    @Test
    void aPieceDyedAgainKeepsItsNumberAndOpensANewState() throws IOException {
        saved(
                "/pieces",
                "number",
                "V24-002",
                "title",
                "Figueira",
                "length",
                "about 180 cm",
                "made.0.clamping",
                "C24-001",
                "made.0.layers",
                "1-4");
        String next = saved("/pieces/V24-002/dye-again");
        assertThat(next).isEqualTo("/clampings/C24-002/edit");
        var piece = wiring.archive().piece("V24-002").orElseThrow();
        assertThat(piece.state()).isEqualTo(2);
        assertThat(piece.length().entered()).isEqualTo("about 180 cm");
        assertThat(piece.made().get(0).layers().entered()).isEqualTo("1-4");
        assertThat(client.get(next).status()).isEqualTo(200);
        assertThat(client.get("/pieces/V24-002").words()).contains("C24-001").contains("C24-002");
        assertThat(wiring.archive().ledger().history(Kinds.PIECE.key("V24-002")))
                .hasSize(2);
    }

    @Test
    void figuresFollowAFormThatIsNotSavedYet() throws IOException {
        Answer figures = client.post(
                "/clampings/figures",
                "cuts.0.cloth",
                "SH",
                "cuts.0.length",
                "100 cm",
                "cuts.0.width",
                "100 cm",
                "steps.0.kind",
                "mordanting",
                "steps.0.charges.0.lot",
                "woad-1",
                "steps.0.charges.0.wof",
                "10 %");
        assertThat(figures.status()).isEqualTo(200);
        assertThat(figures.words()).contains("45");
        Answer problem = client.post("/clampings/figures", "cuts.0.cloth", "SH", "cuts.0.length", "5 parsecs");
        assertThat(problem.status()).isEqualTo(200);
        assertThat(problem.words()).contains("5 parsecs");
        assertThat(wiring.archive().ledger().count(Kinds.CLAMPING)).isEqualTo(1);
    }

    @Test
    void aClampingToldForAPieceIsNamedByItOnceSaved() throws IOException {
        saved("/pieces", "number", "V24-050", "title", "Garça");
        assertThat(client.get("/clampings/new?for=V24-050").text()).contains("value=\"V24-050\"");

        String made =
                saved("/clampings", "id", "", "title", "Second try", "boards.0.use", "B01/I", "forPiece", "V24-050");

        assertThat(made).startsWith("/clampings/C24-");
        assertThat(wiring.archive().piece("V24-050").orElseThrow().made())
                .singleElement()
                .satisfies(
                        passage -> assertThat(made).endsWith(passage.clamping().value()));
        assertThat(client.post("/clampings", "id", "C24-099", "forPiece", "V24-404")
                        .status())
                .isEqualTo(404);
        assertThat(wiring.archive().clamping("C24-099")).as("both or neither").isEmpty();
    }

    @Test
    void theMaterialsOfAClampingAreSplitAmongItsPiecesByArea() throws IOException {
        saved("/clampings", "id", "C24-009", "materials", "76 EUR");
        saved("/pieces", "number", "V24-008", "made.0.clamping", "C24-009", "length", "180 cm", "width", "90 cm");
        saved("/pieces", "number", "V24-009", "made.0.clamping", "C24-009", "length", "90 cm", "width", "180 cm");
        assertThat(client.get("/pieces/V24-009").words().replace('\u00a0', ' '))
                .contains("Materials 38 EUR share of clamping C24-009, by area");
        assertThat(client.get("/clampings/C24-009").words()).doesNotContain("76");
        assertThat(client.get("/clampings/C24-009/edit").text().replace('\u00a0', ' '))
                .contains("value=\"76 EUR\"");
    }
}
