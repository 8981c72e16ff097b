package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.facts.Colours;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;

/** Orders by lightness and contrast, and a ground beside a resist, over the sample archive. */
class ColourOrderTest {
    private static Client client() {
        return new Client(SampleStudio.readOnly().wiring().port());
    }

    private static List<String> numbers(String address) throws IOException {
        return client().get(address).json().get("pieces").findValuesAsText("number").stream()
                .filter(number -> number.startsWith("V"))
                .distinct()
                .toList();
    }

    private static Map<String, Colours> colours() {
        var archive = SampleStudio.readOnly().wiring().archive();
        return PieceReader.all(
                        archive,
                        archive.ledger().all(Kinds.PIECE).stream()
                                .map(saved -> saved.record())
                                .toList())
                .stream()
                .collect(Collectors.toMap(facts -> facts.piece().number().value(), PieceFacts::colours));
    }

    @Test
    void piecesComeByLightnessAndByContrastAndThoseWithoutColoursLast() throws IOException {
        Map<String, Colours> colours = colours();
        List<String> darkest = numbers("/api/pieces?sort=darkest&size=100");
        assertThat(darkest).hasSize(colours.size());
        List<Double> lightness = darkest.stream()
                .map(number -> colours.get(number).lightness())
                .map(each -> each == null ? Double.POSITIVE_INFINITY : each)
                .toList();
        assertThat(lightness).isSorted();
        assertThat(lightness.get(0)).isLessThan(lightness.get(10) - 5);
        List<Double> pale = numbers("/api/pieces?sort=lightest&size=100").stream()
                .map(number -> colours.get(number).lightness())
                .map(each -> each == null ? Double.POSITIVE_INFINITY : -each)
                .toList();
        assertThat(pale).isSorted();
        List<Double> contrast = numbers("/api/pieces?sort=contrast&size=100").stream()
                .map(number -> colours.get(number).contrast())
                .map(each -> each == null ? Double.POSITIVE_INFINITY : -each)
                .toList();
        assertThat(contrast).isSorted();
        assertThat(numbers("/api/pieces?q=darkest&size=100")).isEqualTo(darkest);
        assertThat(client().get("/?sort=contrast").words()).contains("greatest contrast");
    }

    @Test
    void aGroundIsFoundBesideAResistByTheirNamesOrOnTheCloth() throws IOException {
        Map<String, Colours> colours = colours();
        Colours named = colours.get("V24-003");
        String ground = colour(named, "ground");
        String resist = colour(named, "resist");
        List<String> found = numbers("/api/pieces?ground=" + ground + "&resist=" + resist + "&within=4");
        assertThat(found).first().isEqualTo("V24-003");
        assertThat(numbers("/api/pieces?ground=" + resist + "&resist=" + ground + "&within=4"))
                .doesNotContain("V24-003");
        Answer page = client().get("/?ground=" + ground + "&resist=" + resist);
        assertThat(page.words())
                .contains("Ground and resist on one cloth")
                .contains("whether they touch is not looked at")
                .contains("V24-003");
        assertThat(page.text()).contains("name=\"resist\" value=\"" + resist + "\"");
    }

    private static String colour(Colours colours, String role) {
        return colours.named().stream()
                .filter(each -> String.valueOf(each.role()).equals(role))
                .findFirst()
                .orElseThrow()
                .colour()
                .text(2)
                .replace(" ", "");
    }
}
