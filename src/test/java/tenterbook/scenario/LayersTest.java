package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;

/** The layers of one clamping beside each other, over HTTP, on photographs of the sample studio. */
class LayersTest {
    private static SampleStudio studio;
    private static Client client;

    @BeforeAll
    static void open() {
        studio = SampleStudio.readOnly();
        client = new Client(studio.wiring().port());
    }

    private static double share(String words, int layer) {
        return Double.parseDouble(
                words.replaceAll("(?s).*Layer " + layer + " of \\d+:.*?(\\d+)\u00a0% of the outer layers.*", "$1"));
    }

    /** Of V24-008 the sample studio's table says that its inner layers are pale; layers 1 and 5 of 10 were photographed. */
    @Test
    void anInnerLayerThatCameOutPaleIsToldAsPalerThanTheOuter() throws IOException {
        Answer page = client.get("/clampings/C24-008/layers");
        assertThat(page.status()).isEqualTo(200);
        String words = page.words();
        assertThat(words).contains("Layer 1 of 10", "Layer 5 of 10", "K/S");
        assertThat(share(words, 1)).isEqualTo(100);
        assertThat(share(words, 5)).isLessThan(90);
        assertThat(page.text()).contains("/pieces/V24-008/photos/");
    }

    /** Two distances from the boards carry no rate of decay, and the page says so rather than giving one. */
    @Test
    void aRateIsRefusedWhereTwoLayersCannotCarryIt() throws IOException {
        assertThat(client.get("/clampings/C24-008/layers").words())
                .contains("3 different distances")
                .doesNotContain("Each layer further in keeps");
    }

    /** Layers 2 and 3 of C24-014 are neighbours, and both lie inside. */
    @Test
    void withoutAnOuterLayerDepthIsNotMeasurableAndNeighboursAreComparedAllTheSame() throws IOException {
        String words = client.get("/clampings/C24-014/layers").words();
        assertThat(words).contains("Layer 2 of 6", "Layer 3 of 6", "no dyed outer layer", "not measurable");
        assertThat(words)
                .containsPattern(
                        "Layers 2 and 3 do not mirror each other, as far as can be seen: the correlation is -?0\\.[0-2]\\d");
    }

    @Test
    void theBarOfAnOuterLayerIsFull() throws IOException {
        assertThat(client.get("/clampings/C24-008/layers").text())
                .contains("y=\"0.0\" width=\"10\" height=\"100.0\"")
                .contains("A full bar is the depth of the outer layers");
    }

    @Test
    void aClampingWithoutPhotographedLayersSaysWhatItNeeds() throws IOException {
        Answer page = client.get("/clampings/C24-001/layers");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("at least two layers need a photograph")
                .doesNotContain("K/S");
    }

    @Test
    void aClampingWithoutFoldsSaysThatWhereALayerLayIsNotKnown() throws IOException {
        studio.wiring().archive().ledger().write("Inês", act -> {
            Clamping plain = new Clamping(
                    new ClampingId("C24-099"),
                    "plain",
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    "",
                    "",
                    "",
                    "",
                    null,
                    null,
                    null,
                    null);
            return act.create(Kinds.CLAMPING, plain);
        });
        assertThat(client.get("/clampings/C24-099/layers").words()).contains("folds of this clamping are not recorded");
    }

    @Test
    void aClampingThatIsNotThereIsNotFound() throws IOException {
        assertThat(client.get("/clampings/C24-700/layers").status()).isEqualTo(404);
    }
}
